/** Many files over the machine's cores: results in the order of the files, and a worker that dies takes no other file along. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type CheckSettings, type FileResult, failed } from './check-file.ts';
import type { Target } from './targets.ts';

/** The word the program is started with in a worker. */
export const workerCommand = 'check-worker';

export interface WorkerData {
  readonly settings: CheckSettings;
  /** One cell: 1 + the index of the file the worker is at, so that a death has a name. */
  readonly current: SharedArrayBuffer;
}

export interface Order {
  readonly first: number;
  readonly targets: readonly Target[];
}

export interface Answer {
  readonly index: number;
  readonly result: FileResult;
}

/** Files handed out at a time. */
const batch = 20;
const mostWorkers = 8;
/** Of fewer files a worker spends most of its time on code that is still being compiled, for which one core is left free. */
const many = 2000;

export async function checkInWorkers(
  targets: readonly Target[],
  settings: CheckSettings,
  onDone: (count: number) => void,
): Promise<FileResult[]> {
  const results = new Array<FileResult | undefined>(targets.length);
  const waiting: Order[] = [];
  for (let first = 0; first < targets.length; first += batch)
    waiting.push({ first, targets: targets.slice(first, first + batch) });
  waiting.reverse();
  let done = 0;

  const put = (index: number, result: FileResult) => {
    if (results[index]) return;
    results[index] = result;
    onDone(++done);
  };

  /** One worker from its start to its end; resolves when it has nothing more to do or has died. */
  const employ = () =>
    new Promise<void>((resolve) => {
      const current = new SharedArrayBuffer(4);
      const worker = new Worker(__filename, { argv: [workerCommand], workerData: { settings, current } satisfies WorkerData });
      let order: Order | undefined;
      const handOut = () => {
        order = waiting.pop();
        if (order) worker.postMessage(order);
        else worker.postMessage(null);
      };
      const died = (error: unknown) => {
        if (!order) return;
        const index = Math.max(order.first, (Atomics.load(new Int32Array(current), 0) || order.first + 1) - 1);
        put(index, failed(targets[index] as Target, error, settings.version));
        const rest = order.targets
          .map((target, offset) => ({ target, at: (order as Order).first + offset }))
          .filter(({ at }) => !results[at]);
        for (const { target, at } of rest) waiting.push({ first: at, targets: [target] });
        order = undefined;
      };
      worker.on('message', (answers: readonly Answer[]) => {
        for (const { index, result } of answers) put(index, result);
        handOut();
      });
      worker.on('error', died);
      worker.on('exit', (code) => {
        if (code !== 0) died(new Error(`a worker ended with status ${code}`));
        resolve();
      });
      handOut();
    });

  const cores = availableParallelism();
  const count = Math.min(targets.length < many ? Math.max(1, cores - 1) : cores, mostWorkers, waiting.length);
  // A worker that died leaves work behind: another takes its place.
  const employUntilDone = async () => {
    do await employ();
    while (waiting.length > 0);
  };
  await Promise.all(Array.from({ length: count }, employUntilDone));
  return results.map(
    (result, index) => result ?? failed(targets[index] as Target, new Error('no answer came'), settings.version),
  );
}
