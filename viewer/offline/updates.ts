/** Makes the page work without a network, and notices new versions of it. */
import { create } from 'zustand';
import { flush } from '../state/keep/keeper.ts';
import { useResult } from '../state/resultStore.ts';

/** Least time between two looks for a new version, ms. */
const LOOK = 3_600_000;

/** Whether a new version waits to be loaded. */
export const useUpdate = create<{ readonly isReady: boolean }>(() => ({ isReady: false }));

let waiting: ServiceWorker | null = null;

/** A worker that is installed beside the one in charge waits for its turn. */
function notice(registration: ServiceWorkerRegistration): void {
  if (!registration.waiting || !navigator.serviceWorker.controller) return;
  waiting = registration.waiting;
  useUpdate.setState({ isReady: true });
}

function follow(registration: ServiceWorkerRegistration): void {
  notice(registration);
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', () => notice(registration));
  });
  let looked = performance.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || performance.now() - looked < LOOK) return;
    looked = performance.now();
    registration.update().catch(() => undefined); // without a network there is no new version
  });
}

/** Rest after the first coat before all files are stored, ms: the picture comes first. */
const REST = 2000;

/** Registers the service worker, where there can be one, after the first coat; the page works without it. */
export function startOffline(): void {
  const stop = useResult.subscribe(({ phase }) => {
    if (phase === 'computing') return;
    stop();
    setTimeout(register, REST);
  });
}

function register(): void {
  if (!import.meta.env.PROD || !window.isSecureContext || !window.location.protocol.startsWith('http')) return;
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register(new URL('./sw.js', document.baseURI), { scope: './' }).then(follow, () => undefined);
}

/** Loads the page again in its new version, once all work is kept. */
export async function loadUpdate(): Promise<void> {
  await flush();
  const reload = (): void => window.location.reload();
  if (waiting?.state !== 'installed') reload(); // another tab has put it in charge already
  navigator.serviceWorker.addEventListener('controllerchange', reload);
  waiting?.postMessage('take over');
}
