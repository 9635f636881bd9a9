// Joining a site and what belongs to it: the code, the site's project, and for a lead the codes of others.

import { useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { siteSays } from '../../sync/site-says.ts';
import { useAppState, useSite } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { JoinCodes } from './join-codes.tsx';

/** The part of the Record sheet that speaks of the laptop. */
export function Sharing() {
  const words = useWords().sharing;
  const [now] = useSite();
  const { link, joining } = now;
  const says = siteSays(now);
  const again = says === 'ended' || says === 'elsewhere' || says === 'denied';
  return (
    <section className="sharing">
      <h2 className="read-out">{words.title}</h2>
      {link ? null : <p>{words.notShared}</p>}
      {link ? (
        <p>
          <strong>{words.youAre(link.role)}</strong> {words.isSites}
        </p>
      ) : (
        <Joined />
      )}
      <ProjectState />
      {link?.role === 'lead' && now.server !== 'out' ? <JoinCodes site={link.site} /> : null}
      <details className="screen-only" open={!link && !now.other} key={`${link?.site} ${again}`}>
        <summary>{link || now.other ? words.joinAgain : words.join}</summary>
        <JoinForm />
      </details>
      {typeof joining === 'string' && joining !== 'no' && joining !== 'now' ? (
        <p role="alert" className="accent">
          {words.joinFaults[joining]}
        </p>
      ) : null}
    </section>
  );
}

function JoinForm() {
  const words = useWords().sharing;
  const [now, site] = useSite();
  const [code, setCode] = useState('');
  return (
    <form
      className="join-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (code.trim() !== '') void site.join(code);
      }}
    >
      <label>
        {words.code}
        <input
          value={code}
          maxLength={40}
          autoCapitalize="characters"
          autoComplete="off"
          autoCorrect="off"
          spellCheck={false}
          onChange={(event) => setCode(event.target.value)}
        />
        <span className="quiet">{words.codeHint}</span>
      </label>
      <button type="submit" disabled={now.joining === 'now'}>
        {now.joining === 'now' ? words.joining : words.join}
      </button>
    </form>
  );
}

/** A site was joined, and its project is not the one on show. */
function Joined() {
  const { sharing: words, frame } = useWords();
  const [{ other, who, shared, project }, site] = useSite();
  const projects = useAppState((state) => state.projects);
  const title = useAppState((state) => projectOf(state).title) || frame.untitled;
  if (!other) return null;
  const known = projects.find(({ id }) => id === other.project);
  const mayPut = who?.role === 'lead' && who.site === other.site;
  return (
    <div className="sharing-other">
      <p>
        {words.otherSite(known?.title ?? '')} {words.youAre(other.role)}
      </p>
      {other.project !== null || shared === 'there' ? (
        <button type="button" className="screen-only" onClick={site.openProject}>
          {words.openIt}
        </button>
      ) : project.on && shared === 'none' && mayPut ? (
        <>
          <p>{words.putNote}</p>
          <button type="button" className="screen-only" onClick={() => void site.put()}>
            {words.putHere(title)}
          </button>
        </>
      ) : (
        <p>{words.noProject}</p>
      )}
    </div>
  );
}

/** How the site's project stands, where there is anything to say of it. */
function ProjectState() {
  const words = useWords().sharing;
  const [{ link, project, shared }] = useSite();
  if (!link) return null;
  if (shared === 'faulty') return <p className="accent">{words.faulty}</p>;
  if (project.waiting === 0 || shared !== 'there') return null;
  if (project.trouble?.what === 'denied' || link.role !== 'lead')
    return <p className="accent">{words.projectDenied}</p>;
  return project.on ? null : <p>{words.projectWaits}</p>;
}
