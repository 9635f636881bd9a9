// Bags to be filled and ticked off, counting down; what is to be bought before which stage; charge. The
// bag of the stage on show is open.

import {
  type Bag,
  type Charge,
  type KitAnswer,
  kitCheck,
  type Need,
  needWords,
} from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { lineKey, type Ticked, tickedWith, ticksOf } from './kit-ticks.ts';
import { useTicked } from './use-ticked.ts';

/** The sections. */
export function KitSections({ kit, number }: { kit: KitAnswer; number: number }) {
  return (
    <>
      <BagList kit={kit} number={number} />
      <ToBuy kit={kit} />
      {kit.charge === null ? null : <ChargeTold charge={kit.charge} />}
    </>
  );
}

/** The bag of one stage with its tools. */
export function StageBag({ kit, number }: { kit: KitAnswer; number: number }) {
  const words = useWords().yard;
  const bag = kit.bags.bags.find(({ stage }) => stage === number);
  const tools = kit.tools.find(({ stage }) => stage === number)?.tools ?? [];
  return (
    <section className="stage-bag">
      <h4>{words.bagOf}</h4>
      <p>{bag ? bag.needs.map(needWords).join(', ') : words.noBag}</p>
      {tools.length > 0 ? <p className="quiet">{words.tools(tools)}</p> : null}
    </section>
  );
}

function BagList({ kit, number }: { kit: KitAnswer; number: number }) {
  const words = useWords().yard;
  const [ticked, setTicked] = useTicked();
  const { bags, unknown } = kit.bags;
  const check = kitCheck(bags, ticksOf(bags, ticked));
  return (
    <section className="kit">
      <h3>{words.bags}</h3>
      <p className="raise-verdict" aria-live="polite">
        {check.left === 0 ? words.packed(bags.length) : words.left(check.left, check.lines)}
      </p>
      <p className="quiet">{words.ticksKept}</p>
      {unknown.length > 0 ? <p className="accent">{words.unknown(unknown)}</p> : null}
      {bags.map((bag, i) => (
        <BagCard
          key={bag.label.title}
          bag={bag}
          isOpen={bag.stage === number}
          left={check.bags[i]?.left.length ?? 0}
          tools={kit.tools.find(({ stage }) => stage === bag.stage)?.tools ?? []}
          ticked={ticked}
          onTick={(need, isIn) => setTicked(tickedWith(ticked, bag.stage, need, isIn))}
        />
      ))}
    </section>
  );
}

function BagCard({
  bag,
  isOpen,
  left,
  tools,
  ticked,
  onTick,
}: {
  bag: Bag;
  isOpen: boolean;
  left: number;
  tools: readonly string[];
  ticked: Ticked;
  onTick: (need: Need, isIn: boolean) => void;
}) {
  const words = useWords().yard;
  const { title, lines } = bag.label;
  return (
    <details className="tags bag" open={isOpen}>
      <summary>
        {title} <span className="quiet">{left === 0 ? words.full : words.bagLeft(left)}</span>
      </summary>
      <ul>
        {bag.needs.map((need) => (
          <li key={lineKey(bag.stage, need)}>
            <label className="check">
              <input
                type="checkbox"
                checked={(ticked[lineKey(bag.stage, need)] ?? 0) >= need.quantity - 1e-6}
                onChange={({ target }) => onTick(need, target.checked)}
              />
              {needWords(need)}
            </label>
          </li>
        ))}
      </ul>
      {lines.slice(bag.needs.length).map((line) => (
        <p key={line} className="quiet">
          {line}
        </p>
      ))}
      {tools.length > 0 ? <p>{words.tools(tools)}</p> : null}
    </details>
  );
}

function ToBuy({ kit: { buy } }: { kit: KitAnswer }) {
  const words = useWords().yard;
  return (
    <section>
      <h3>{words.buy}</h3>
      {buy.length === 0 ? (
        <p>{words.buyNothing}</p>
      ) : (
        <table className="raise-lifts">
          <thead>
            <tr>
              <th scope="col">{words.buyHeads.before}</th>
              <th scope="col">{words.buyHeads.what}</th>
              <th scope="col">{words.buyHeads.short}</th>
            </tr>
          </thead>
          <tbody>
            {buy.map(({ line, before, short }) => (
              <tr key={needWords(line)}>
                <td className={before === null ? 'quiet' : 'accent'}>{words.before(before)}</td>
                <th scope="row">{needWords({ ...line, quantity: line.toBuy })}</th>
                <td>
                  {words.short(
                    short.reduce((sum, one) => sum + one.quantity, 0),
                    line.unit,
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function ChargeTold({ charge: { words: told, unknown, short } }: { charge: Charge }) {
  const words = useWords().yard;
  return (
    <section>
      <h3>{words.charge}</h3>
      <p className={short === null ? '' : 'accent'}>{told}</p>
      {unknown.length > 0 ? <p className="quiet">{words.chargeUnknown(unknown)}</p> : null}
    </section>
  );
}
