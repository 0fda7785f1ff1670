/** Work that is done again only when what it depends on is another than last time. */
export function whenChanged<Inputs extends readonly unknown[]>(work: (...inputs: Inputs) => void) {
  let last: Inputs | null = null;
  return (...inputs: Inputs): void => {
    if (last && inputs.every((input, i) => Object.is(input, last?.[i]))) return;
    last = inputs;
    work(...inputs);
  };
}
