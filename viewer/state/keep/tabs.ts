/** Talk among the tabs of one browser. */

export type TabMessage =
  /** is anybody there who holds it? */
  | { readonly kind: 'ask'; readonly designId: string }
  /** I hold it */
  | { readonly kind: 'held'; readonly designId: string }
  /** write what you have: I take it over */
  | { readonly kind: 'take'; readonly designId: string }
  /** I have written all I had */
  | { readonly kind: 'given'; readonly designId: string }
  /** a state of it was written */
  | { readonly kind: 'written'; readonly designId: string };

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('evenfall');

export function tell(message: TabMessage): void {
  channel?.postMessage(message);
}

/** Listens to the other tabs; answers how to stop. */
export function listen(hear: (message: TabMessage) => void): () => void {
  const onMessage = ({ data }: MessageEvent<TabMessage>): void => hear(data);
  channel?.addEventListener('message', onMessage);
  return () => channel?.removeEventListener('message', onMessage);
}

/** Tells something and waits for an answer of a kind; false if none comes in time. */
export async function inquire(message: TabMessage, answer: TabMessage['kind'], time: number): Promise<boolean> {
  return new Promise((resolve) => {
    const settle = (answered: boolean): void => {
      clearTimeout(timer);
      stop();
      resolve(answered);
    };
    const timer = setTimeout(() => settle(false), time);
    const stop = listen(({ kind, designId }) => {
      if (kind === answer && designId === message.designId) settle(true);
    });
    tell(message);
  });
}
