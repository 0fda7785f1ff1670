/** Who wants arrival angles with the next coats: they cost extra, so they are worked out on demand. */
import { create } from 'zustand';

export const useArrivalWish = create<{ readonly wishes: number }>(() => ({ wishes: 0 }));

/** Asks for arrival angles until the returned function is called. */
export function wishArrival(): () => void {
  const change = (by: number): void => useArrivalWish.setState(({ wishes }) => ({ wishes: wishes + by }));
  change(1);
  return () => change(-1);
}
