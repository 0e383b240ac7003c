/** Where to read the main breaker's rating: the number on its handle. */
export function MainBreakerPicture() {
  return (
    <svg
      viewBox="0 0 260 170"
      class="picture"
      role="img"
      aria-label="A panel with its door open. The main breaker is at the top; the number on its handle, here 150, is the service size. The metal cover stays on."
    >
      <g class="ink">
        <rect x="10" y="8" width="110" height="154" rx="3" />
        <rect x="40" y="20" width="50" height="34" />
        <path d="M10 62h110M65 62v100M22 74h36M22 88h36M22 102h36M22 116h36M22 130h36M22 144h36M72 74h36M72 88h36M72 102h36M72 116h36M72 130h36M72 144h36" />
        <path d="M92 36h52" />
        <circle cx="65" cy="37" r="27" stroke-dasharray="4 3" />
      </g>
      <g class="letters">
        <text x="65" y="42" text-anchor="middle" class="big">
          150
        </text>
        <text x="150" y="32">
          main breaker:
        </text>
        <text x="150" y="48">
          read this number
        </text>
        <text x="150" y="96">
          door open,
        </text>
        <text x="150" y="112">
          metal cover on:
        </text>
        <text x="150" y="128">
          never take it off
        </text>
      </g>
    </svg>
  );
}

/** Where the bus rating and the count of spaces stand: the label inside the door. */
export function PanelLabelPicture() {
  return (
    <svg
      viewBox="0 0 260 150"
      class="picture"
      role="img"
      aria-label="The label inside the panel's door. It gives the maximum amperes of the bus, the number of spaces, and the types of breaker the panel takes."
    >
      <g class="ink">
        <path d="M12 10h96v130H12zM108 10l22-6v142l-22-6" />
        <rect x="22" y="22" width="76" height="72" />
        <path d="M28 62h64M28 72h64M28 82h40M98 34h46M98 50h46M92 72h52" />
      </g>
      <g class="letters">
        <text x="28" y="38" class="small">
          MAX 200 A
        </text>
        <text x="28" y="53" class="small">
          30 SPACES
        </text>
        <text x="150" y="38">
          bus rating
        </text>
        <text x="150" y="56">
          spaces
        </text>
        <text x="150" y="76">
          breakers it takes
        </text>
      </g>
    </svg>
  );
}
