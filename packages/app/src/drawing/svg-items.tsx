// Drawing data of core as SVG on the screen: the same items that are printed, in the colours of the
// present scheme. Millimetres are the units of the SVG's view box.

import {
  type CircleItem,
  dashLengths,
  type Fill,
  type HatchName,
  hatchNamed,
  hatchNames,
  type Item,
  inkColours,
  lineWeights,
  type PathItem,
  type Point,
  type Stroke,
  tints,
} from '@shellraise/core';
import { memo } from 'react';
import { hatchMarks } from './hatch-lines.ts';

/** Halfway up the capitals of the typeface, in parts of its size: texts stand on that line. */
const HALF_CAPITALS = 0.345;

/** Width of a hatch's lines, millimetres. */
const HATCH_LINE = 0.13;

const inkOf: ReadonlyMap<string, string> = new Map([
  ...Object.entries(inkColours).map(([ink, colour]) => [colour, `var(--${ink})`] as const),
  ...Object.entries(tints).map(([name, colour]) => [colour, `var(--tint-${name})`] as const),
]);

/** A colour of the sheet as the present scheme has it. */
export const screenColour = (colour: string): string => inkOf.get(colour) ?? colour;

/** Every hatch once for the whole page, as patterns `hatch-…`. */
export const HatchPatterns = memo(function HatchPatterns() {
  return (
    <svg className="patterns" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {hatchNames.map((name) => (
          <HatchPattern key={name} name={name} />
        ))}
      </defs>
    </svg>
  );
});

function HatchPattern({ name }: { name: HatchName }) {
  const { tile, angle, lines, crossed, drawn, dots } = hatchNamed(name);
  const dash = drawn < 1 ? `${tile * drawn} ${tile * (1 - drawn)}` : undefined;
  return (
    <pattern
      id={`hatch-${name}`}
      width={tile}
      height={tile}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${angle})`}
    >
      <g stroke="var(--hatch)" strokeWidth={HATCH_LINE} fill="none" strokeDasharray={dash}>
        {lines.map((y) => (
          <path key={y} d={`M0 ${y}H${tile}${crossed ? `M${y} 0V${tile}` : ''}`} />
        ))}
        {dots.map(({ x, y, r, ring }) => (
          <circle
            key={`${x} ${y}`}
            cx={x}
            cy={y}
            r={r}
            fill={ring ? 'none' : 'var(--hatch)'}
            stroke={ring ? 'var(--hatch)' : 'none'}
          />
        ))}
      </g>
    </pattern>
  );
}

/** Items of a drawing, in order; `onPaper` for a drawing that is printed. */
export const SvgItems = memo(function SvgItems({
  items,
  onPaper = false,
}: {
  items: readonly Item[];
  onPaper?: boolean;
}) {
  return (
    <>
      {items
        .map((item, i) => ({ item, key: `${item.type}${i}` }))
        .map(({ item, key }) => (
          <SvgItem key={key} item={item} onPaper={onPaper} />
        ))}
    </>
  );
});

function SvgItem({ item, onPaper }: { item: Item; onPaper: boolean }) {
  switch (item.type) {
    case 'group': {
      const data = Object.entries(item.data ?? {}).map(([key, value]) => [`data-${key}`, value]);
      return (
        <g {...Object.fromEntries(data)}>
          <SvgItems items={item.items} onPaper={onPaper} />
        </g>
      );
    }
    case 'text':
      return (
        <text
          x={item.at[0]}
          y={item.at[1] + HALF_CAPITALS * item.size}
          fontSize={item.size}
          fontWeight={item.bold ? 600 : 400}
          textAnchor={item.anchor ?? 'start'}
          fill={`var(--${item.ink ?? 'ink'})`}
          transform={item.rotate ? `rotate(${item.rotate} ${item.at[0]} ${item.at[1]})` : undefined}
          {...(item.halo
            ? { stroke: 'var(--paper)', strokeWidth: 2 * item.halo, paintOrder: 'stroke' }
            : {})}
        >
          {item.text}
        </text>
      );
    case 'path':
      return <Shape item={item} d={pathData(item)} outline={onPaper ? item.points : null} />;
    case 'circle':
      return <Shape item={item} d={circleData(item)} outline={null} />;
  }
}

/** A shape; with an outline its hatch is drawn line by line. */
function Shape({
  item,
  d,
  outline,
}: {
  item: PathItem | CircleItem;
  d: string;
  outline: readonly Point[] | null;
}) {
  const { tint, hatch }: Fill = item.fill ?? { tint: null, hatch: null };
  const stroke = item.stroke ? strokeOf(item.stroke) : {};
  if (hatch === null)
    return <path d={d} fill={tint === null ? 'none' : screenColour(tint)} {...stroke} />;
  return (
    <>
      {tint === null ? null : <path d={d} fill={screenColour(tint)} />}
      {outline === null ? (
        <path d={d} fill={`url(#hatch-${hatch})`} {...stroke} />
      ) : (
        <>
          <DrawnHatch name={hatch} outline={outline} />
          {item.stroke ? <path d={d} fill="none" {...stroke} /> : null}
        </>
      )}
    </>
  );
}

function DrawnHatch({ name, outline }: { name: HatchName; outline: readonly Point[] }) {
  const { lines, dots, rings, dash } = hatchMarks(name, outline);
  const line = { fill: 'none', stroke: 'var(--hatch)', strokeWidth: HATCH_LINE };
  return (
    <>
      {lines === '' ? null : <path d={lines} {...line} strokeDasharray={dash?.join(' ')} />}
      {dots === '' ? null : <path d={dots} {...(rings ? line : { fill: 'var(--hatch)' })} />}
    </>
  );
}

/** Attributes of a line of the drawing. */
function strokeOf({ weight, dash = 'solid', ink = 'ink' }: Stroke) {
  const dashes = dashLengths[dash];
  return {
    stroke: `var(--${ink})`,
    strokeWidth: lineWeights[weight],
    ...(dashes.length > 0 ? { strokeDasharray: dashes.join(' ') } : {}),
  };
}

const pathData = ({ points, closed }: PathItem): string =>
  `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}${closed ? 'Z' : ''}`;

const circleData = ({ centre: [x, y], radius: r }: CircleItem): string =>
  `M${round(x - r)} ${round(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

const round = (value: number): number => Math.round(value * 1000) / 1000;
