import type { What } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { DEMO } from '../../src/state/app-state.ts';
import { siteSays } from '../../src/sync/site-says.ts';
import { retitle, titleOf } from '../state/notation.ts';
import { browser, laptop, type OpenPage, until } from './devices.ts';

const snug: What = { kind: 'seam pass', seam: '1-01/1-02', pass: 'snug' };
const says = ({ now }: OpenPage) => siteSays(now());
const kept = (page: OpenPage) => until(() => says(page) === 'kept', 'all is on the laptop');
const idOf = ({ app }: OpenPage) => app.state.getState().projectId;

/** A site with a project, put there by a lead. */
async function site() {
  const up = await laptop();
  const codes = await up.codes();
  const lead = browser(up.port, 'Barn').open();
  await lead.site.join(codes.lead);
  await until(() => lead.now().project.on && lead.now().shared === 'none', 'the lead is in');
  await lead.site.put();
  await kept(lead);
  return { ...up, codes, lead };
}

/** A device that has joined and sees the project. */
async function joined(port: number, code: string, title: string) {
  const device = browser(port, title);
  const page = device.open();
  await page.site.join(code);
  await kept(page);
  return { device, page };
}

describe('a device that joins', () => {
  it('gets the site’s project as one of its own list, and leaves the others as they were', async () => {
    const { port, codes } = await site();
    const device = browser(port, 'my own');
    const page = device.open();
    retitle(page.app, 'my own pile');
    await page.app.save();
    const own = idOf(page);
    await page.site.join(codes.crew.toLowerCase());
    await kept(page);
    expect(titleOf(page.app)).toBe('Barn');
    expect(page.now().link).toMatchObject({ role: 'crew', project: idOf(page) });
    expect((await device.projects.list()).map(({ title }) => title).sort()).toEqual([
      'Barn',
      'my own pile',
    ]);
    await page.app.open(own);
    expect([titleOf(page.app), says(page)]).toEqual(['my own pile', 'own']);
    page.site.openProject();
    await kept(page);
    expect(titleOf(page.app)).toBe('Barn');
  });

  it('is told in words why it did not: wrong, revoked, too often, no laptop, none who shares', async () => {
    const { port, codes, lead, end } = await site();
    const page = browser(port).open();
    const tried = async (code: string) => {
      await page.site.join(code);
      return page.now().joining;
    };
    expect(await tried('AAAAA-AAAAA')).toBe('wrong');
    const list = await lead.site.calls.codes();
    const crew = list.ok ? list.value.find(({ role }) => role === 'crew') : undefined;
    await lead.site.calls.revoke(crew?.id ?? 0);
    expect(await tried(codes.crew)).toBe('wrong');
    for (let i = 0; i < 10; i++) await page.site.calls.join('AAAAAAAAAA');
    expect(await tried(codes.looker)).toBe('later');
    await end();
    expect(await tried(codes.looker)).toBe('away');
    expect(idOf(page)).toBe(DEMO);
    const plain = await laptop(null);
    const other = browser(plain.port).open();
    await other.site.join(codes.looker);
    expect(other.now()).toMatchObject({ joining: 'none', server: 'none' });
  });

  it('waits where no lead has put a project there, and opens it as soon as it comes', async () => {
    const up = await laptop();
    const codes = await up.codes();
    const crew = browser(up.port).open();
    await crew.site.join(codes.crew);
    await until(() => crew.now().shared === 'none', 'there is none');
    expect([idOf(crew), crew.now().other?.role]).toEqual([DEMO, 'crew']);
    const lead = browser(up.port, 'Barn').open();
    await lead.site.join(codes.lead);
    await until(() => lead.now().project.on && lead.now().shared === 'none', 'the lead is in');
    await crew.site.put();
    expect(crew.now().shared).toBe('none');
    await lead.site.put();
    await kept(crew);
    expect(titleOf(crew.app)).toBe('Barn');
  });
});

describe('what is noted', () => {
  it('goes to the others, waits while the laptop is away, and says so at each step', async () => {
    const { port, data, codes, end } = await site();
    const { page: ada } = await joined(port, codes.crew, 'ada');
    const { page: bob, device } = await joined(port, codes.crew, 'bob');
    ada.record().say(snug, 'Ada');
    expect([says(ada), ada.now().record.waiting]).toEqual(['sending', 1]);
    await kept(ada);
    await until(() => bob.record().log.size === 1, 'Bob has it');
    await end();
    await until(() => says(ada) === 'away' && says(bob) === 'away', 'the laptop is away');
    expect(ada.now().record.waiting).toBe(0);
    ada.record().say({ ...snug, pass: 'final' }, 'Ada');
    bob.record().say({ ...snug, pass: 'finger' }, 'Bob');
    expect([ada, bob].map((page) => page.now().record.waiting)).toEqual([1, 1]);
    // A page that is opened far from the laptop knows what was on it before.
    await new Promise((done) => setTimeout(done, 1100));
    bob.close();
    const again = device.open();
    await again.app.open((await device.projects.list())[0]?.id ?? '');
    await until(() => again.record().log.size === 2, 'Bob opens it again');
    await until(() => says(again) === 'away', 'still away');
    expect(again.now().record.waiting).toBe(1);
    const back = await laptop(data, port);
    await kept(ada);
    await kept(again);
    await until(
      () => ada.record().log.size === 3 && again.record().log.size === 3,
      'both have all',
    );
    expect(ada.record().log.questions()).toEqual(['seam 1-01/1-02']);
    expect(again.record().log.entries()).toEqual(ada.record().log.entries());
    await back.end();
  });

  it('never goes to another site that is kept at the same address', async () => {
    const { port, codes, end } = await site();
    const { page: ada } = await joined(port, codes.crew, 'ada');
    await end();
    await until(() => says(ada) === 'away', 'the laptop is away');
    ada.record().say(snug, 'Ada');
    const other = await laptop(undefined, port);
    await until(() => says(ada) === 'ended', 'it is not known there');
    const there = await other.codes();
    const lead = browser(port, 'Shed').open();
    await lead.site.join(there.lead);
    await until(() => lead.now().project.on && lead.now().shared === 'none', 'the lead is in');
    await lead.site.put();
    await ada.site.join(there.crew);
    await kept(ada);
    expect([titleOf(ada.app), ada.record().log.size]).toEqual(['Shed', 0]);
    expect(lead.record().log.size).toBe(0);
    const first = ada.app.state.getState().projects.find(({ title }) => title === 'Barn');
    await ada.app.open(first?.id ?? '');
    await until(() => says(ada) === 'elsewhere', 'this one’s laptop is not here');
    expect(ada.now().record.waiting).toBe(1);
  });

  it('is out when its code is revoked, and goes up again with another', async () => {
    const { port, codes, lead } = await site();
    const { page: ada } = await joined(port, codes.crew, 'ada');
    const list = await lead.site.calls.codes();
    const crew = list.ok ? list.value.find(({ role }) => role === 'crew') : undefined;
    await lead.site.calls.revoke(crew?.id ?? 0);
    await until(() => says(ada) === 'ended', 'the code is told as ended');
    ada.record().say(snug, 'Ada');
    expect(ada.now().record.waiting).toBe(1);
    const made = await lead.site.calls.makeCode('crew');
    await ada.site.join(made.ok ? made.value.code : '');
    await kept(ada);
    await until(() => lead.record().log.size === 1, 'the lead has it');
  });

  it('is nothing on a looker’s device', async () => {
    const { port, codes, lead } = await site();
    const { page } = await joined(port, codes.looker, 'eve');
    expect(page.record().store.getState().mayNote).toBe(false);
    expect(() => page.record().say(snug, 'Eve')).toThrow('only look');
    lead.record().say(snug, 'Lee');
    await until(() => page.record().log.size === 1, 'it sees what others note');
    await page.site.join(codes.crew);
    await kept(page);
    page.record().say({ ...snug, pass: 'final' }, 'Eve');
    await until(() => lead.record().log.size === 2, 'as crew it may');
  });
});

describe('the project of a site', () => {
  it('is changed by leads alone, each at once where the others see it, and undone as one’s own', async () => {
    const { port, codes, lead } = await site();
    const { page: crew } = await joined(port, codes.crew, 'ada');
    const { page: second } = await joined(port, codes.lead, 'lee');
    retitle(lead.app, 'Big barn');
    for (const page of [crew, second])
      await until(() => titleOf(page.app) === 'Big barn', 'others see it');
    retitle(crew.app, 'Shed');
    expect([titleOf(crew.app), crew.refused()]).toEqual(['Big barn', 1]);
    const rows = (page: OpenPage) => page.app.state.getState().history.doc.project.pile.readings;
    const row = { sides: [2, 2, 2], seenFrom: 'unknown' as const };
    second.app.change(({ project }) => void project.pile.readings.push({ ...row }), {
      label: 'row',
    });
    retitle(lead.app, 'Biggest barn');
    for (const page of [crew, second, lead])
      await until(() => titleOf(page.app) === 'Biggest barn' && rows(page).length === 2, 'both');
    second.app.undo();
    second.app.undo();
    for (const page of [crew, lead]) await until(() => rows(page).length === 1, 'undone');
  });

  it('is what the lead put there, once: rows added before and after, and joined again', async () => {
    const up = await laptop();
    const codes = await up.codes();
    const lead = browser(up.port, 'Barn').open();
    const rowsOf = ({ app }: OpenPage) => app.state.getState().history.doc.project.pile.readings;
    const addRow = (label: string) =>
      lead.app.change(
        ({ project }) => void project.pile.readings.push({ sides: [2, 2, 2], seenFrom: 'unknown' }),
        { label },
      );
    addRow('first');
    expect(idOf(lead)).not.toBe(DEMO);
    await lead.site.join(codes.lead);
    await until(() => lead.now().project.on && lead.now().shared === 'none', 'the lead is in');
    await lead.site.put();
    await kept(lead);
    expect(rowsOf(lead)).toHaveLength(2);
    const { page: crew } = await joined(up.port, codes.crew, 'ada');
    expect(rowsOf(crew)).toHaveLength(2);
    addRow('second');
    await until(() => rowsOf(crew).length === 3, 'the crew has the new row');
    await lead.site.join(codes.lead);
    await kept(lead);
    for (const page of [lead, crew]) expect(rowsOf(page)).toHaveLength(3);
    lead.app.undo();
    lead.app.undo();
    await until(() => rowsOf(crew).length === 1, 'both are undone there too');
  });

  it('takes a lead’s changes that were made while the laptop was away, and those of a page just opened', async () => {
    const { port, data, codes, end, lead } = await site();
    const { page, device } = await joined(port, codes.lead, 'lee');
    await end();
    await until(() => says(page) === 'away', 'away');
    retitle(page.app, 'Named far away');
    await page.app.save();
    page.close();
    const again = device.open();
    await again.app.open((await device.projects.list())[0]?.id ?? '');
    again.app.change(({ project }) => void project.pile.readings.pop(), { label: 'out' });
    const back = await laptop(data, port);
    await kept(again);
    await until(() => titleOf(lead.app) === 'Named far away', 'the other lead sees it');
    await until(
      () => lead.app.state.getState().history.doc.project.pile.readings.length === 0,
      'and that',
    );
    expect(titleOf(again.app)).toBe('Named far away');
    await back.end();
  });
});
