/** Faults that the test switches on and off. */
export const faults = { isOffline: true, isBroken: true };

declare global {
  interface Window {
    faults: typeof faults;
  }
}
window.faults = faults;
