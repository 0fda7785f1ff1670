/** What single filaments have of their own: their charge, and whether they are out of use. */
import type { DesignFile, Filament } from '../../../engine/index.ts';
import { withValue } from './path.ts';
import { withSet, type SetFile } from './parts.ts';
import { hasSingleFilaments } from './singleFilaments.ts';

type Exception = NonNullable<SetFile['exceptions']>[number];
type Own = Partial<Omit<Exception, 'filament'>>;
/** A filament by its set and its number in it. */
export type FilamentPlace = Pick<Filament, 'set' | 'number'>;

/** A set with values of their own for some of its filaments; exceptions that say nothing more are dropped. */
function withExceptions(set: SetFile, numbers: readonly number[], change: (own: Own) => Own): SetFile {
  const byNumber = new Map((set.exceptions ?? []).map(({ filament, ...own }): [number, Own] => [filament, own]));
  for (const number of numbers) byNumber.set(number, change(byNumber.get(number) ?? {}));
  const exceptions = [...byNumber]
    .filter(([, own]) => Object.values(own).some((value) => value !== undefined))
    .map(([filament, own]): Exception => ({ filament, ...own }))
    .toSorted((a, b) => a.filament - b.filament);
  return withValue(set, ['exceptions'], exceptions.length > 0 ? exceptions : undefined);
}

/** Changes each set that holds some of the filaments, told their numbers in it. */
function bySet(
  file: DesignFile,
  places: readonly FilamentPlace[],
  change: (set: SetFile, numbers: readonly number[]) => SetFile,
): DesignFile {
  return [...new Set(places.map(({ set }) => set))].reduce((next, iSet) => {
    const set = next.filaments[iSet];
    const numbers = places.flatMap((place) => (place.set === iSet ? place.number : []));
    return set ? withSet(next, iSet, change(set, numbers)) : next;
  }, file);
}

/** Marks filaments as out of use, or in use again. */
export function withOutOfUse(file: DesignFile, places: readonly FilamentPlace[], outOfUse: boolean): DesignFile {
  return bySet(file, places, (set, numbers) =>
    withExceptions(set, numbers, ({ charge }) => ({
      ...(charge !== undefined && { charge }),
      ...(outOfUse && { outOfUse }),
    })),
  );
}

/** Gives filaments a charge of their own, or with undefined the charge of their set again. */
export function withOwnCharge(
  file: DesignFile,
  places: readonly FilamentPlace[],
  charge: string | undefined,
): DesignFile {
  return bySet(file, places, (set, numbers) => {
    const isListed = hasSingleFilaments(set);
    const charged = isListed
      ? {
          ...set,
          filaments: set.filaments.map((row, i) =>
            numbers.includes(i + 1) ? withValue(row, ['charge'], charge) : row,
          ),
        }
      : set;
    return withExceptions(charged, numbers, ({ outOfUse }) => ({
      ...(!isListed && charge !== undefined && { charge }),
      ...(outOfUse !== undefined && { outOfUse }),
    }));
  });
}

/** The exceptions of a list after one filament was put in or taken out behind the first `from` filaments. */
export function shiftedExceptions(exceptions: readonly Exception[], from: number, by: number): Exception[] {
  return exceptions.map((own) => (own.filament > from ? { ...own, filament: own.filament + by } : own));
}
