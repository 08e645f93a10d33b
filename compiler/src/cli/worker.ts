/** The end of the pool inside a worker: checks the files it is handed, and answers by the batch. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Command } from 'commander';
import { fileChecker } from './check-file.ts';
import type { Answer, Order, WorkerData } from './pool.ts';

export function define(command: Command): void {
  command.action(serve);
}

/** Over when nothing more is handed out. */
function serve(): Promise<void> {
  const port = parentPort;
  if (!port) throw new Error('only the program itself starts a worker');
  const { settings, current } = workerData as WorkerData;
  const at = new Int32Array(current);
  const check = fileChecker(settings);
  const over = new Promise<void>((resolve) => port.on('close', resolve));
  port.on('message', (order: Order | null) => {
    if (!order) {
      port.close();
      return;
    }
    const answers = order.targets.map((target, offset): Answer => {
      const index = order.first + offset;
      Atomics.store(at, 0, index + 1);
      return { index, result: check(target) };
    });
    port.postMessage(answers);
  });
  return over;
}
