// Whether what was noted is on the laptop, in a line: beside the plan with all that is to be said of it,
// under the plan in a few words. The mark before it is full, half or empty besides.

import { goesByItself, type SiteSays, siteSays } from '../../sync/site-says.ts';
import { useSite } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** All that is to be said. */
export function SiteLine() {
  const words = useWords().sharing;
  const [now] = useSite();
  const says = siteSays(now);
  return (
    <p className="site-line" data-says={says} role="status">
      <Mark says={says} />
      {words.says(says, now.record.waiting, goesByItself(says))}
    </p>
  );
}

/** The same in a few words, where the thumb is; nothing where the project belongs to no site. */
export function SiteStrip() {
  const words = useWords().sharing;
  const [now] = useSite();
  const says = siteSays(now);
  if (says === 'own') return null;
  return (
    <p className="site-strip site-line screen-only" data-says={says}>
      <Mark says={says} />
      <span>{words.short(says, now.record.waiting)}</span>
      {now.link?.role === 'looker' ? <span className="quiet">{words.youAre('looker')}</span> : null}
    </p>
  );
}

const half: readonly SiteSays[] = ['sending', 'opening', 'later'];
const empty: readonly SiteSays[] = ['own', 'away', 'no laptop', 'elsewhere', 'ended', 'foreign'];

function Mark({ says }: { says: SiteSays }) {
  const fill =
    says === 'kept' ? 'full' : half.includes(says) ? 'half' : empty.includes(says) ? 'empty' : 'no';
  return <span className="site-mark" data-fill={fill} aria-hidden="true" />;
}
