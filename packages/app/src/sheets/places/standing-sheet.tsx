// A sheet that needs a standing shell: its title, what is under way, and either the sheet or why there is
// no shell.

import type { ReactNode } from 'react';
import { TitleBlock } from '../../ui/title-block.tsx';
import { NoShell, Steps } from './sheet-states.tsx';
import type { Stood } from './stood.ts';
import { useStood } from './use-stood.ts';

/** The sheet; `children` draw it once there is a shell. */
export function StandingSheet({
  title,
  className,
  children,
}: {
  title: string;
  className: string;
  children: (stood: Stood) => ReactNode;
}) {
  const stood = useStood();
  return (
    <div className={`places-sheet ${className}`}>
      <h1 className="read-out">{title}</h1>
      <Steps />
      {stood ? (
        children(stood)
      ) : (
        <div className="choosing">
          <NoShell onChoose={() => undefined} />
          <div className="choosing-foot">
            <TitleBlock />
          </div>
        </div>
      )}
    </div>
  );
}
