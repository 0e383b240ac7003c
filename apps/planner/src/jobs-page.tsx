import { useState } from "preact/hooks";
import { readChosenJob } from "./paper/files.js";
import { forget, newJob, openJob, planner } from "./planner.js";

/** Jobs kept in this browser, and files to open. */
export function JobsPage() {
  const { jobs, jobId, kept } = planner();
  const [refused, setRefused] = useState("");
  return (
    <main id="main">
      <h2>Jobs</h2>
      <p>They are kept in this browser alone; nothing is sent anywhere. Download the job file to have it elsewhere too.</p>
      {kept === "not kept" && (
        <p class="wrong">This browser keeps nothing (a private window, or its store is full): download the job file before you close the page.</p>
      )}
      <p class="answer">
        <button type="button" onClick={newJob}>
          New job
        </button>
        <label class="button">
          Open a job file or a packet (PDF)
          <input
            type="file"
            accept=".yaml,.yml,.pdf"
            class="unseen"
            onChange={async (event) => {
              const read = await readChosenJob(event.currentTarget);
              setRefused(read !== null && "refused" in read ? read.refused : "");
              if (read !== null && "text" in read) openJob(read);
            }}
          />
        </label>
      </p>
      {refused && (
        <p class="wrong" role="alert">
          {refused}
        </p>
      )}
      <ul class="jobs">
        {jobs.map((job) => (
          <li key={job.id}>
            <button type="button" class="link" onClick={() => openJob(job)} aria-current={job.id === jobId ? "true" : undefined}>
              {job.title}
            </button>{" "}
            <span class="hint">kept {job.saved.slice(0, 16).replace("T", " ")}</span>{" "}
            {job.id !== jobId && (
              <button type="button" class="plain" onClick={() => void forget(job.id)}>
                Forget<span class="unseen"> {job.title}</span>
              </button>
            )}
          </li>
        ))}
        {jobs.length === 0 && <li>None yet.</li>}
      </ul>
    </main>
  );
}
