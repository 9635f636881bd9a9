import { entryIdOf, type Project, projectFrom } from '@shellraise/core';
import { addToDoc, projectIn, rawEntries, writeProject } from '@shellraise/sync';
import { describe, expect, it, onTestFinished } from 'vitest';
import * as Y from 'yjs';
import { openStorage } from '../../src/sync/sqlite.ts';
import { emptyFolder } from '../built.ts';
import { ask, device, joinWith, recordPhone, serve, until } from './phones.ts';

const project = (title: string): Project => {
  const read = projectFrom({ shellraise: 1, title, pile: {} });
  if (!read.ok) throw new Error('no project');
  return read.value;
};

describe('sharing a record', () => {
  it('brings each phone’s entries to all, and tells when they are on disk', async () => {
    const { port, codes, data, server } = await serve();
    const { crew } = await codes();
    const [a, b] = [await joinWith(port, crew), await joinWith(port, crew)];
    const [ada, bob] = [recordPhone(port, a, 'Ada'), recordPhone(port, b, 'Bob')];
    for (let i = 0; i < 20; i++) for (const phone of [ada, bob]) phone.say();
    await until(() => ada.record.log.size === 40 && bob.record.log.size === 40, 'both have all');
    await until(() => ada.unsaved() + bob.unsaved() === 0, 'all is told as kept');
    expect(bob.record.log.entries()).toEqual(ada.record.log.entries());
    await server.close();
    const storage = await openStorage(data);
    const doc = new Y.Doc();
    for (const bytes of (await storage.updates('record')).updates) Y.applyUpdate(doc, bytes);
    await storage.close();
    expect(rawEntries(doc)).toHaveLength(40);
  });

  it('merges what was said apart, with no doubles, when phones come back', async () => {
    const first = await serve();
    const { crew } = await first.codes();
    const cookie = await joinWith(first.port, crew);
    const [ada, bob] = [
      recordPhone(first.port, cookie, 'Ada'),
      recordPhone(first.port, cookie, 'Bob'),
    ];
    const seam = '1-01/1-02';
    ada.say({ kind: 'seam pass', seam, pass: 'finger' });
    await until(() => bob.record.log.size === 1, 'Bob has it');
    for (const { provider } of [ada, bob]) provider.disconnect();
    ada.say({ kind: 'seam pass', seam, pass: 'snug' });
    bob.say({ kind: 'seam pass', seam, pass: 'final' });
    const file = ada.record.log.entries();
    expect(bob.record.bring(file)).toBe(1);
    await first.server.close();
    const second = await serve(first.data);
    for (const phone of [ada, bob]) phone.connect(second.port);
    await until(() => ada.record.log.size === 3 && bob.unsaved() + ada.unsaved() === 0, 'merged');
    expect(ada.record.log.questions()).toEqual([`seam ${seam}`]);
    expect(new Set(ada.record.log.entries().map(entryIdOf)).size).toBe(3);
  });

  it('asks a phone for all that is missing where an update comes without what it needs', async () => {
    const { port, codes } = await serve();
    const cookie = await joinWith(port, (await codes()).crew);
    const doc = new Y.Doc();
    const phone = recordPhone(port, cookie, 'Ada', doc);
    await until(() => phone.provider.synced, 'in');
    // Said while the provider does not listen: the next update has a gap before it.
    const listeners = doc._observers.get('update');
    doc._observers.delete('update');
    phone.say();
    doc._observers.set('update', listeners as never);
    phone.say();
    await until(() => phone.unsaved() === 0, 'both are kept');
    const other = recordPhone(port, cookie, 'Bob');
    await until(() => other.record.log.size === 2, 'and go to others');
  });
});

describe('who may do what', () => {
  it('is by code: a lead writes the project, a crew the record alone, a looker nothing', async () => {
    const { port, codes } = await serve();
    const all = await codes();
    const cookies = {
      lead: await joinWith(port, all.lead),
      crew: await joinWith(port, all.crew.toLowerCase().replace(/(.{5})/, '$1-')),
      looker: await joinWith(port, all.looker),
    };
    const on = (role: keyof typeof cookies, name: string) => {
      const one = device(port, cookies[role], name);
      onTestFinished(one.stop);
      return one;
    };
    const lead = on('lead', 'project');
    writeProject(lead.doc, project('Barn'));
    await until(() => lead.unsaved() === 0, 'the lead’s project is kept');
    for (const role of ['crew', 'looker'] as const) {
      const one = on(role, 'project');
      await until(() => projectIn(one.doc).ok, `the ${role} sees it`);
      writeProject(one.doc, project(`by ${role}`));
    }
    const looker = recordPhone(port, cookies.looker, 'Eve');
    looker.say();
    const crew = recordPhone(port, cookies.crew, 'Ada');
    crew.say();
    await until(
      () => crew.unsaved() === 0 && looker.record.log.size === 2,
      'the crew’s entry is kept',
    );
    const [seen, record] = [on('lead', 'project'), recordPhone(port, cookies.lead, 'Lee')];
    await until(() => seen.provider.synced && record.record.log.size > 0, 'a new lead is in');
    expect(projectIn(seen.doc)).toMatchObject({ value: { title: 'Barn' } });
    expect(record.record.log.entries().map(({ by }) => by)).toEqual(['Ada']);
    expect(looker.unsaved()).toBe(1);
    const status = async (role: keyof typeof cookies, method: string, path: string) =>
      (await ask(port, method, path, { headers: { cookie: cookies[role] } })).status;
    expect(await status('lead', 'GET', '/sync/codes')).toBe(200);
    for (const role of ['crew', 'looker'] as const)
      for (const [method, path] of [
        ['GET', '/sync/codes'],
        ['POST', '/sync/codes'],
        ['DELETE', '/sync/codes/1'],
      ] as const)
        expect(await status(role, method, path)).toBe(403);
  });

  it('ends with a code that is revoked: its lines are cut and joining again is refused', async () => {
    const { port, codes } = await serve();
    const all = await codes();
    const [lead, crew] = [await joinWith(port, all.lead), await joinWith(port, all.crew)];
    const phone = recordPhone(port, crew, 'Eve');
    const other = recordPhone(port, lead, 'Lee');
    await until(() => phone.provider.synced && other.provider.synced, 'both are in');
    const cut = new Promise((resolve) => phone.provider.once('closed' as never, resolve as never));
    const rows = JSON.parse(
      (await ask(port, 'GET', '/sync/codes', { headers: { cookie: lead } })).text,
    );
    const { id } = rows.find(({ role }: { role: string }) => role === 'crew');
    expect(
      (await ask(port, 'DELETE', `/sync/codes/${id}`, { headers: { cookie: lead } })).status,
    ).toBe(204);
    await cut;
    expect((await ask(port, 'GET', '/sync/who', { headers: { cookie: crew } })).status).toBe(401);
    expect((await ask(port, 'POST', '/sync/join', { body: { code: all.crew } })).status).toBe(403);
    expect(
      (await ask(port, 'DELETE', `/sync/codes/${id}`, { headers: { cookie: lead } })).status,
    ).toBe(404);
    const made = await ask(port, 'POST', '/sync/codes', {
      body: { role: 'crew' },
      headers: { cookie: lead },
    });
    expect(await joinWith(port, JSON.parse(made.text).code)).toMatch(/^shellraise=/);
    other.say();
    await until(() => other.unsaved() === 0, 'others go on');
    expect(phone.provider.wsconnected).toBe(false);
  });
});

describe('storage', () => {
  it('puts many small updates together when it opens, and loses none', async () => {
    const data = emptyFolder();
    const storage = await openStorage(data);
    const doc = new Y.Doc();
    const updates: Uint8Array[] = [];
    doc.on('update', (bytes: Uint8Array) => updates.push(bytes));
    for (let i = 0; i < 520; i++)
      addToDoc(doc, [
        {
          writer: 'ada00000',
          seq: i,
          order: i + 1,
          at: Date.now(),
          by: 'Ada',
          what: { kind: 'note', text: 'x' },
        },
      ]);
    await storage.turn('record', 0, () => updates);
    await storage.close();
    const { port, codes, server } = await serve(data);
    const phone = recordPhone(port, await joinWith(port, (await codes()).looker), 'Eve');
    await until(() => phone.record.log.size === 520, 'all are there');
    await server.close();
    const again = await openStorage(data);
    expect((await again.updates('record')).updates).toHaveLength(1);
    await again.close();
  });

  it('is one server’s alone, and free again when that one ends', async () => {
    const data = emptyFolder();
    const first = await openStorage(data);
    await expect(openStorage(data)).rejects.toThrow(/another server keeps the record/);
    await first.close();
    await (await openStorage(data)).close();
  });

  it('keeps nothing of a change that does not fit on the disk, and goes on', async () => {
    const data = emptyFolder();
    const storage = await openStorage(data, 40);
    const bytes = new Uint8Array(10_000);
    const kept = async () => (await storage.updates('record')).updates.length;
    let refused = 0;
    for (let i = 0; i < 40; i++)
      try {
        await storage.turn('record', 0, () => [bytes, bytes]);
      } catch {
        refused++;
      }
    expect(refused).toBeGreaterThan(10);
    expect(await kept()).toBe(2 * (40 - refused));
    await storage.close();
    const again = await openStorage(data);
    expect((await again.updates('record')).updates).toHaveLength(2 * (40 - refused));
    await again.turn('record', 0, () => [bytes]);
    await again.close();
  });
});
