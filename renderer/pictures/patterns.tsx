/** The hatchings, one set for each picture: closed, window, cut away, seabed. They are texture; their meaning is written. */
export function Patterns({ id }: { id: string }) {
  return (
    <defs>
      <pattern
        id={`${id}-closed`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d="M0 0V7" stroke="var(--hatch)" strokeWidth="1.2" />
      </pattern>
      <pattern id={`${id}-window`} width="6" height="6" patternUnits="userSpaceOnUse">
        <circle cx="1.5" cy="1.5" r="0.9" fill="var(--hatch2)" />
        <circle cx="4.5" cy="4.5" r="0.9" fill="var(--hatch2)" />
      </pattern>
      <pattern
        id={`${id}-cut`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <path d="M0 0V6" stroke="var(--hatch)" strokeWidth="1.2" />
      </pattern>
      <pattern
        id={`${id}-saving`}
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d="M0 0V5" stroke="var(--data)" strokeWidth="1.4" />
      </pattern>
      <pattern id={`${id}-bed`} width="9" height="9" patternUnits="userSpaceOnUse">
        <circle cx="2" cy="2.5" r="0.8" fill="var(--bed-ink)" />
        <circle cx="6.5" cy="7" r="0.8" fill="var(--bed-ink)" />
      </pattern>
    </defs>
  );
}
