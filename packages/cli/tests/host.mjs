// A process that runs the built command line again and again, one run after the other, for tests
// that are about what a command says and not about the process: the engine is loaded once. What its
// threads were asked before they are not asked again.

import { EventEmitter } from 'node:events';
import { createRequire, syncBuiltinESMExports } from 'node:module';
import { deserialize, serialize } from 'node:v8';

const threads = createRequire(import.meta.url)('node:worker_threads');
const { Worker } = threads;

/** Answers by file and question, as bytes: who gets one gets a copy. */
const answered = new Map();

/** A thread that is only started where its question is new. */
class AskedOnce extends EventEmitter {
  constructor(file, { workerData }) {
    super();
    const question = `${file} ${serialize(workerData).toString('latin1')}`;
    const known = answered.get(question);
    if (known !== undefined) {
      setImmediate(() => {
        this.emit('message', deserialize(known));
        this.emit('exit', 0);
      });
      return;
    }
    const worker = new Worker(file, { workerData });
    worker.on('message', (message) => {
      if ('answer' in message) answered.set(question, serialize(message));
      this.emit('message', message);
    });
    for (const event of ['error', 'exit']) worker.once(event, (what) => this.emit(event, what));
  }
}
threads.Worker = AskedOnce;
syncBuiltinESMExports();

const { main } = await import('../dist/run/main.js');
const ownEnv = { ...process.env };

/** One run: its words, folder and what of the environment is other than ours. */
async function run({ args, cwd, env }) {
  const said = { out: '', err: '' };
  const own = [process.stdout.write, process.stderr.write];
  const into = (name) => (text) => {
    said[name] += text;
    return true;
  };
  process.chdir(cwd);
  Object.assign(process.env, env);
  process.stdout.write = into('out');
  process.stderr.write = into('err');
  process.exitCode = 0;
  try {
    await main(args);
    return { ...said, code: process.exitCode };
  } finally {
    [process.stdout.write, process.stderr.write] = own;
    for (const name of Object.keys(env)) {
      if (name in ownEnv) process.env[name] = ownEnv[name];
      else delete process.env[name];
    }
    process.exitCode = 0;
    process.removeAllListeners('SIGINT');
    process.stdout.removeAllListeners('error');
  }
}

let before = Promise.resolve();
process.on('message', ({ id, asked }) => {
  before = before
    .then(() => run(asked))
    .then(
      (ran) => process.send({ id, ran }),
      (error) => process.send({ id, fault: String(error?.stack ?? error) }),
    );
});
process.on('disconnect', () => process.exit());
