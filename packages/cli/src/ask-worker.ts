// Asks a thread of its own one question, so that the bar moves and an interrupt is heard at once.

import { Worker } from 'node:worker_threads';

type Message<Answer, Progress> = { readonly progress: Progress } | { readonly answer: Answer };

/** The answer of the worker at `file`, which gets the question as its data, tells its progress and
 * then its answer, and ends. The thread is waited for, not killed: Node can crash where a thread is
 * killed while it ends by itself. Throws what the worker threw, or that it ended without an answer. */
export function askWorker<Answer, Progress>(
  file: URL,
  question: unknown,
  onProgress: (progress: Progress) => void,
): Promise<Answer> {
  const worker = new Worker(file, { workerData: question });
  const answers: Answer[] = [];
  return new Promise((resolve, reject) => {
    worker.on('message', (message: Message<Answer, Progress>) => {
      if ('answer' in message) answers.push(message.answer);
      else onProgress(message.progress);
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      const [answer] = answers;
      if (answer !== undefined) resolve(answer);
      else reject(new Error(`${file.pathname} ended with code ${code} and no answer`));
    });
  });
}
