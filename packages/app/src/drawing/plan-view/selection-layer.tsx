// What is selected, drawn over the plan: places of a kind with an accent outline, one place with a
// heavy one and its number in the accent, a hub as a ring, a seam as a heavy line.

import type { Item, Shell } from '@shellraise/core';
import { memo, useMemo } from 'react';
import { SvgItems } from '../svg-items.tsx';
import { endsOf, type Picked, type PlanPoints, spotAt } from './pick.ts';
import { accented } from './recolour.ts';

/** What the layer is drawn from. */
export interface SelectionLayerProps {
  readonly shell: Shell;
  readonly picture: PlanPoints;
  readonly labels: readonly Item[];
  readonly picked: Picked | null;
  readonly marked: readonly number[];
}

/** The layer. */
export const SelectionLayer = memo(function SelectionLayer(props: SelectionLayerProps) {
  const { shell, picture, labels, picked, marked } = props;
  const many = useMemo(
    () => marked.map((place) => outlineData(picture, place)).join(''),
    [picture, marked],
  );
  return (
    <g className="plan-selection">
      {many === '' ? null : <path className="marked" d={many} />}
      {picked?.type === 'place' ? (
        <>
          <path className="picked" d={outlineData(picture, picked.place)} />
          <SvgItems items={accented(labels, picked.place)} />
        </>
      ) : null}
      {picked?.type === 'seam' ? (
        <path className="picked-seam" d={seamData(shell, picture, picked.side)} />
      ) : null}
      {picked?.type === 'hub' ? <HubRing picture={picture} hub={picked.hub} /> : null}
    </g>
  );
});

function HubRing({ picture, hub }: { picture: PlanPoints; hub: number }) {
  const [x, y] = spotAt(picture.hubs, hub);
  return <circle className="picked-hub" cx={x} cy={y} r={2.2} />;
}

function outlineData({ outlines }: PlanPoints, place: number): string {
  const points: string[] = [];
  outlines[place]?.forEach((value, i) => {
    points.push(`${i === 0 ? 'M' : i % 2 === 0 ? 'L' : ' '}${Math.round(value * 1000) / 1000}`);
  });
  return points.length === 0 ? '' : `${points.join('')}Z`;
}

function seamData(shell: Shell, picture: PlanPoints, side: number): string {
  const [[ax, ay], [bx, by]] = endsOf(shell, picture, side);
  return `M${ax} ${ay}L${bx} ${by}`;
}
