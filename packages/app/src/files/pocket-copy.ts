// The pocket copy: one file with app, project and record, which opens from a phone's own files without
// a server. A pocket copy can be made out of another.

import { writeRecordFile } from '@shellraise/core';
import { quickEngine } from '../engine/bridge.ts';
import { type App, DEMO, docOf } from '../state/app-state.ts';
import type { Words } from '../words/words.ts';
import { type Carried, isPocketCopy, withCarried } from './carried.ts';
import { download, fileName } from './save-file.ts';

/** Hands the project on show, with its record, out as a pocket copy. */
export async function savePocketCopy(app: App, words: Words['frame']): Promise<void> {
  const { projectId } = app.state.getState();
  const { project } = docOf(app.state.getState());
  try {
    const page = await emptyPage();
    const { recordOf } = await import('../record/this-record.ts');
    const { opened } = await import('../record/record-session.ts');
    const session = recordOf(projectId);
    await opened(session);
    const carried: Carried = {
      id: projectId === DEMO ? `${DEMO}-pocket` : projectId,
      at: Date.now(),
      project: await quickEngine.ask('writeProject', project).answer,
      record: writeRecordFile(session.log.entries()),
    };
    const name = `${fileName(project.title || words.untitled)}.pocket.html`;
    download(name, withCarried(page, carried), 'text/html');
    app.tell('note', words.pocketSaved(name));
  } catch {
    app.tell('fault', words.noPocket);
  }
}

/** The text of the page as it was before it ran, carrying nothing of use. */
async function emptyPage(): Promise<string> {
  if (!isPocketCopy()) {
    const answer = await fetch('./pocket.html');
    if (!answer.ok) throw new Error(`pocket.html: ${answer.status}`);
    return answer.text();
  }
  const page = document.documentElement.cloneNode(true) as HTMLElement;
  const room = page.querySelector('#app');
  room?.replaceChildren();
  for (const left of page.querySelectorAll('body > :not(#app, script, noscript)')) left.remove();
  for (const name of page.getAttributeNames()) if (name !== 'lang') page.removeAttribute(name);
  return `<!doctype html>\n${page.outerHTML}`;
}
