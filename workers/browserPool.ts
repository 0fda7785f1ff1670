/** The pool of a page. */
import { wrap } from 'comlink';
import { createPool, type ComputeWorker, type WorkerPool } from './pool.ts';
import { isProgress, type ComputeApi } from './protocol.ts';

const MAX_WORKERS = 8;

function spawn(): ComputeWorker {
  const thread = new Worker(new URL('./browserWorker.ts', import.meta.url), {
    type: 'module',
    name: 'evenfall compute',
  });
  const died = new Promise<never>((_, reject) => {
    const fail = (reason: string): void =>
      reject(new Error(`A calculation worker stopped (${reason}); a new one has taken its place.`));
    thread.addEventListener('error', (event) => {
      thread.terminate();
      fail(event.message || 'it could not be started');
    });
    thread.addEventListener('messageerror', () => fail('a message could not be read'));
  });
  const worker: ComputeWorker = {
    api: wrap<ComputeApi>(thread) as unknown as ComputeApi,
    onProgress: () => {},
    died,
    terminate: () => thread.terminate(),
  };
  thread.addEventListener('message', ({ data }) => {
    if (isProgress(data)) worker.onProgress(data);
  });
  return worker;
}

/** Starts as many workers as the machine has cores, 8 at most. */
export function createBrowserPool(
  size = Math.min(MAX_WORKERS, Math.max(1, navigator.hardwareConcurrency)),
): WorkerPool {
  return createPool(spawn, size);
}
