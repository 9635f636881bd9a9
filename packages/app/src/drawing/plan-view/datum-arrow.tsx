// The arrow above the plan towards the datum: up the page, from above as from below.

/** The arrow; `top` is where the drawing begins, millimetres; `turned`: degrees clockwise about the
 * crown, its word staying upright. */
export function DatumArrow({
  top,
  label,
  turned = 0,
}: {
  top: number;
  label: string;
  turned?: number;
}) {
  const [foot, tip] = [top - 2, top - 10];
  const [x, y] = [2.8, tip + 4.2];
  const turn = turned === 0 ? {} : { transform: `rotate(${turned})` };
  const upright = turned === 0 ? {} : { transform: `rotate(${-turned} ${x} ${y})` };
  return (
    <g className="datum" {...turn}>
      <path d={`M0 ${foot}V${tip + 2.4}`} />
      <path className="datum-head" d={`M0 ${tip}L-1.3 ${tip + 3}H1.3Z`} />
      <text x={x} y={y} fontSize={4.6} {...upright}>
        {label}
      </text>
    </g>
  );
}
