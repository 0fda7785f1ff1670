/** Entry of a compute worker in a browser. */
import { expose } from 'comlink';
import { createComputeHost } from './computeHost.ts';
import { STORE_BYTES_PER_WORKER } from './storeSize.ts';

const bell = new MessageChannel();
const waiting: (() => void)[] = [];
bell.port1.onmessage = () => waiting.shift()?.();

expose(
  createComputeHost(
    {
      post: (message) => self.postMessage(message),
      breathe: async () =>
        new Promise((resolve) => {
          waiting.push(resolve);
          bell.port2.postMessage(null);
        }),
    },
    STORE_BYTES_PER_WORKER,
  ),
);
