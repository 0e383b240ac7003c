import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { focusAim } from "./planner.js";

/** A part of the page that is fetched when it is first shown. */
export function later<P extends object>(fetched: () => Promise<ComponentType<P>>): ComponentType<P> {
  let there: ComponentType<P> | null = null;
  return function Later(props: P) {
    const [failure, setFailure] = useState("");
    const [tries, setTries] = useState(0);
    const [, again] = useState({});
    useEffect(() => {
      if (there !== null) return;
      let gone = false;
      fetched().then(
        (part) => {
          there = part;
          if (gone) return;
          again({});
          focusAim();
        },
        (error: unknown) => {
          if (!gone) setFailure(error instanceof Error ? error.message : String(error));
        },
      );
      return () => {
        gone = true;
      };
    }, [tries]);
    const Part = there;
    if (Part !== null) return <Part {...props} />;
    if (failure === "") return <p role="status">Loading this part…</p>;
    return (
      <p class="wrong" role="alert">
        This part of the page could not be loaded: {failure}.{" "}
        <button
          type="button"
          onClick={() => {
            setFailure("");
            setTries(tries + 1);
          }}
        >
          Try again
        </button>
      </p>
    );
  };
}
