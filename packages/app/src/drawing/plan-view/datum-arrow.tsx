// The arrow above the plan towards the datum: up the page, from above as from below.

/** The arrow; `top` is where the drawing begins, millimetres. */
export function DatumArrow({ top, label }: { top: number; label: string }) {
  const [foot, tip] = [top - 2, top - 10];
  return (
    <g className="datum">
      <path d={`M0 ${foot}V${tip + 2.4}`} />
      <path className="datum-head" d={`M0 ${tip}L-1.3 ${tip + 3}H1.3Z`} />
      <text x={2.8} y={tip + 4.2} fontSize={4.6}>
        {label}
      </text>
    </g>
  );
}
