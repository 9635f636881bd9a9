// For a lead: the join codes by role, made and revoked; the picture by which a phone joins, and its paper.

import { joinAddress, spelled } from '@shellraise/sync';
import { useCallback, useEffect, useRef, useState } from 'react';
import { addressesFor, plainOf } from '../../sync/join-address.ts';
import { type JoinCode, roles } from '../../sync/site-calls.ts';
import { useSite } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { CodeDrawing } from './code-drawing.tsx';
import { JoinPaper } from './join-paper.tsx';

/** The codes, shown when they are asked for: they are not for every eye that passes. */
export function JoinCodes({ site }: { site: string }) {
  const words = useWords().sharing;
  const [shown, setShown] = useState(false);
  return (
    <details
      className="join-codes screen-only"
      key={site}
      onToggle={(event) => setShown(event.currentTarget.open)}
    >
      <summary>{words.showCodes}</summary>
      {shown ? <Codes /> : null}
    </details>
  );
}

function Codes() {
  const words = useWords().sharing;
  const [, site] = useSite();
  const [codes, setCodes] = useState<readonly JoinCode[] | null>(null);
  const [addresses, setAddresses] = useState<readonly string[]>([]);
  const [address, setAddress] = useState(0);
  const [chosen, setChosen] = useState<number | null>(null);
  const [told, setTold] = useState('');
  const load = useCallback(async () => {
    const [list, found] = await Promise.all([site.calls.codes(), site.calls.addresses()]);
    setCodes(list.ok ? list.value : null);
    setAddresses(addressesFor(location.href, found.ok ? found.value : []));
    setTold(list.ok ? '' : words.noCodes);
  }, [site, words]);
  useEffect(() => void load(), [load]);
  const revoke = async ({ id, code }: JoinCode): Promise<void> => {
    const done = await site.calls.revoke(id);
    await load();
    setTold(done.ok ? words.revoked(spelled(code)) : words.noCodes);
  };
  // The picture that was asked for comes into sight, whole.
  const drawn = useRef<HTMLElement>(null);
  useEffect(() => {
    if (chosen !== null) drawn.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  const shown = codes?.find(({ id }) => id === chosen);
  const base = addresses[Math.min(address, addresses.length - 1)];
  const figure = (
    <>
      {shown && base === undefined ? <p className="accent">{words.alone}</p> : null}
      {shown && base !== undefined ? (
        <figure className="join-figure" ref={drawn}>
          <CodeDrawing
            text={joinAddress(base, shown.code)}
            label={words.picture(words.roles[shown.role].toLowerCase())}
          />
          <figcaption>
            {addresses.length > 1 ? (
              <label>
                {words.address}
                <select
                  value={address}
                  onChange={(event) => setAddress(Number(event.target.value))}
                >
                  {addresses.map((one, i) => (
                    <option key={one} value={i}>
                      {one}
                    </option>
                  ))}
                </select>
              </label>
            ) : null}
            <span className="join-address">{joinAddress(base, shown.code)}</span>
            <button type="button" onClick={() => print()}>
              {words.print}
            </button>
          </figcaption>
          <JoinPaper base={base} plain={plainOf(base, addresses)} code={shown} />
        </figure>
      ) : null}
    </>
  );
  return (
    <div className="codes">
      <p className="quiet">{words.codesWhy}</p>
      {told === '' ? null : <p role="status">{told}</p>}
      {codes
        ? roles.map((role) => (
            <section key={role} aria-label={words.roles[role]}>
              <h3>
                {words.roles[role]} <span className="quiet">{words.may[role]}</span>
              </h3>
              <ul>
                {codes
                  .filter((one) => one.role === role)
                  .map((one) => (
                    <li key={one.id}>
                      <span>
                        <strong className="code">{spelled(one.code)}</strong>
                        <span className="quiet">{words.joinedWith(one.sessions)}</span>
                      </span>
                      <button
                        type="button"
                        aria-label={words.showOf(spelled(one.code))}
                        aria-pressed={chosen === one.id}
                        onClick={() => setChosen(chosen === one.id ? null : one.id)}
                      >
                        {words.show}
                      </button>
                      <button
                        type="button"
                        aria-label={words.revokeOf(spelled(one.code))}
                        onClick={() => void revoke(one)}
                      >
                        {words.revoke}
                      </button>
                    </li>
                  ))}
              </ul>
              {shown?.role === role ? figure : null}
              <button
                type="button"
                onClick={() => void site.calls.makeCode(role).then(() => load())}
              >
                {words.newCode(role)}
              </button>
            </section>
          ))
        : null}
    </div>
  );
}
