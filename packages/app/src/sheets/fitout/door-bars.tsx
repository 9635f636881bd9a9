// What holds the door: the push in each prop, what header, jambs and sill bear, and the bars that the lead
// names for them.

import {
  type DoorBracing,
  type DoorSection,
  type PartBears,
  SECTION_SUPPOSED,
} from '@shellraise/core';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField, plain } from '../ground/fields.tsx';
import { Choice, optionsOf } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { Facts } from './parts.tsx';
import { useFitout } from './use-fitout.ts';

/** What props and bars bear. */
export function BracingFacts({ bracing }: { bracing: DoorBracing }) {
  const words = useWords().fitout.door;
  const lengths = useLengths();
  const { force, metric } = useQuantities();
  const { props, bears, sag, snow } = bracing;
  const moment = (newtonMetres: number): string =>
    metric ? `${plain(newtonMetres, 0)} N·m` : `${plain(newtonMetres / 1.355_818, 0)} lbf·ft`;
  const wants = ({ area, modulus }: PartBears): string =>
    metric
      ? words.wantsTold(
          `${plain(1e4 * (area ?? 0), 2)} cm²`,
          `${plain(1e6 * (modulus ?? 0), 1)} cm³`,
        )
      : words.wantsTold(
          `${plain((area ?? 0) / 0.0254 ** 2, 2)} in²`,
          `${plain((modulus ?? 0) / 0.0254 ** 3, 2)} in³`,
        );
  const used = bears.flatMap((one) => (one.used === null ? [] : [one.used]));
  return (
    <>
      <Facts
        of={[
          ...props.map(
            ({ push }, i) =>
              [
                words.push(letterOf(i)),
                push < 0.5 ? words.standsBy : words.pushes(force(push)),
              ] as const,
          ),
          ...bears.flatMap((one) => [
            [
              words.bears[one.part],
              words.bearsTold(one.axial < 0, force(Math.abs(one.axial)), moment(one.moment)),
            ] as const,
            one.area === null ? null : ([words.wants[one.part], wants(one)] as const),
          ]),
          used.length === 0 ? null : [words.used, words.usedTold(words.share(Math.max(...used)))],
          [words.aside, words.asideTold(words.share(Math.max(...bears.map(({ aside }) => aside))))],
          [words.framedSag, lengths.small(sag)],
        ]}
      />
      <p className="quiet">
        {words.load(
          snow === 0
            ? null
            : metric
              ? `${plain(snow / 1000, 2)} kN/m²`
              : `${plain(snow / 47.880_26, 1)} lbf/ft²`,
        )}
      </p>
    </>
  );
}

/** As on the drawing: a, b … z, then a2. */
const letterOf = (i: number): string =>
  `${String.fromCharCode(97 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26) + 1}`;

/** The bars of header and jambs. */
export function BarForm() {
  const { fitout } = useWords();
  const words = fitout.door;
  const { settings, set } = useFitout();
  const bar = settings.doorFrame;
  const put = (doorFrame: DoorSection | null): void => set({ doorFrame }, fitout.changes.door);
  const change = (part: Partial<DoorSection>): void => {
    if (bar === null) return;
    const next = { ...bar, ...part };
    // A wall that no longer leaves a hollow goes with the size that took it.
    const leaves = next.wall === null || 2 * next.wall < Math.min(next.width, next.depth);
    put(leaves ? next : { ...next, wall: null });
  };
  return (
    <>
      <h4>{words.section}</h4>
      <div className="ground-form">
        <Choice
          name={words.named}
          value={bar === null ? 'supposed' : 'own'}
          of={optionsOf(words.names)}
          onChoose={(by) => put(by === 'own' ? SECTION_SUPPOSED : null)}
        />
        {bar === null ? null : (
          <>
            <LengthField
              fine
              name={words.width}
              value={bar.width}
              least={0.005}
              most={1}
              needed
              onValue={(width) => width !== null && change({ width })}
            />
            <LengthField
              fine
              name={words.depth}
              value={bar.depth}
              least={0.005}
              most={1}
              needed
              onValue={(depth) => depth !== null && change({ depth })}
            />
            <LengthField
              fine
              name={words.wall}
              value={bar.wall}
              least={0.0005}
              most={Math.min(0.1, 0.49 * Math.min(bar.width, bar.depth))}
              note={words.wallNote}
              onValue={(wall) => change({ wall })}
            />
            <NumberField
              name={words.young}
              value={bar.young}
              per={1e9}
              least={1e8}
              most={1e12}
              needed
              onValue={(young) => young !== null && change({ young })}
            />
            <NumberField
              name={words.allowable}
              value={bar.allowable}
              per={1e6}
              least={1e5}
              most={1e10}
              note={words.allowableNote}
              onValue={(allowable) => change({ allowable })}
            />
          </>
        )}
      </div>
    </>
  );
}
