/** The headline numbers of variants: how each is shown, sorted, and which is best. */
import { inUnit, type Coat, type Estimate } from '../../../engine/index.ts';
import { estimateRatio, estimateText, estimate_percent, tolerance, type EstimateText } from '../../format/numbers.ts';
import type { Units } from '../../state/units.ts';
import { perKilogram, shotMassUnit } from './masses.ts';

export interface Column {
  readonly key: string;
  readonly label: string;
  readonly unit: (units: Units) => string;
  readonly explanation: string;
  /** what the best value of the column is, in words */
  readonly best: string;
  /** how the numbers run when the best comes first */
  readonly bestFirst: 'ascending' | 'descending' | 'other';
  /** SI */
  readonly estimate: (coat: Coat) => Estimate;
  readonly text: (estimate: Estimate, units: Units) => EstimateText;
  /** distance from the best there could be, in any unit: least is best */
  readonly distance: (coat: Coat) => number;
}

const perMetre = (units: Units): number => inUnit(1, 'length', units.thickness);
const thickness = (estimate: Estimate, units: Units): EstimateText => estimateText(estimate, perMetre(units));
const thicknessUnit = (units: Units): string => units.thickness;
const percentUnit = (): string => '%';

export const COLUMNS: readonly Column[] = [
  {
    key: 'mean',
    label: 'Mean',
    unit: thicknessUnit,
    explanation: 'over the clear aperture, weighted by area',
    best: 'nearest to its target',
    bestFirst: 'other',
    estimate: ({ statistics }) => statistics.mean,
    text: thickness,
    distance: ({ statistics, plant }) => Math.abs(statistics.mean.value - plant.film.target),
  },
  {
    key: 'minimum',
    label: 'Min',
    unit: thicknessUnit,
    explanation: 'thinnest place of the clear aperture',
    best: 'thickest',
    bestFirst: 'descending',
    estimate: ({ statistics }) => statistics.minimum,
    text: thickness,
    distance: ({ statistics }) => -statistics.minimum.value,
  },
  {
    key: 'maximum',
    label: 'Max',
    unit: thicknessUnit,
    explanation: 'thickest place of the clear aperture',
    best: 'nearest to its target',
    bestFirst: 'other',
    estimate: ({ statistics }) => statistics.maximum,
    text: thickness,
    distance: ({ statistics, plant }) => Math.abs(statistics.maximum.value - plant.film.target),
  },
  {
    key: 'uniformity',
    label: 'Uniformity ±',
    unit: percentUnit,
    explanation: '(max − min) / (max + min)',
    best: 'least',
    bestFirst: 'ascending',
    estimate: ({ statistics }) => statistics.uniformity,
    text: estimate_percent,
    distance: ({ statistics }) => statistics.uniformity.value,
  },
  {
    key: 'rms',
    label: 'RMS',
    unit: percentUnit,
    explanation: 'standard deviation / mean',
    best: 'least',
    bestFirst: 'ascending',
    estimate: ({ statistics }) => statistics.rms,
    text: estimate_percent,
    distance: ({ statistics }) => statistics.rms.value,
  },
  {
    key: 'edge',
    label: 'Edge ratio',
    unit: () => '',
    explanation: 'mean over the outermost 2 % of the radius / mean',
    best: 'nearest to 1',
    bestFirst: 'other',
    estimate: ({ statistics }) => statistics.edgeRatio,
    text: estimateRatio,
    distance: ({ statistics }) => Math.abs(statistics.edgeRatio.value - 1),
  },
  {
    key: 'inside',
    label: 'In tolerance',
    unit: percentUnit,
    explanation: 'share of the clear aperture within the tolerance of the mean',
    best: 'most',
    bestFirst: 'descending',
    estimate: ({ statistics }) => statistics.fractionInside,
    text: estimate_percent,
    distance: ({ statistics }) => -statistics.fractionInside.value,
  },
  {
    key: 'collected',
    label: 'Collected',
    unit: percentUnit,
    explanation: 'mass on the mirror / mass evaporated',
    best: 'most',
    bestFirst: 'descending',
    estimate: ({ statistics }) => statistics.collection,
    text: estimate_percent,
    distance: ({ statistics }) => -statistics.collection.value,
  },
  {
    key: 'evaporated',
    label: 'Evaporated',
    unit: shotMassUnit,
    explanation: 'aluminium on all filaments in use',
    best: 'least',
    bestFirst: 'ascending',
    estimate: ({ budget }) => ({ value: budget.evaporated, error: 0 }),
    text: (estimate, units) => ({ ...estimateText(estimate, perKilogram(units)), error: 'exact' }),
    distance: ({ budget }) => budget.evaporated,
  },
];

/** A row of the table: a design and its coat, if that is known. */
export interface Row {
  readonly id: string;
  readonly coat: Coat | null;
}

/** Sums of the same masses in another order differ by less than this share of themselves. */
const SUMMING = 1e-9;

/** Whether a coat has thickness at all: a bare mirror is best in nothing. */
const counts = ({ coat }: Row): boolean => coat !== null && coat.statistics.mean.value > 0;

const distanceOf = (column: Column, { coat }: Row): number => (coat ? column.distance(coat) : Infinity);
const errorOf = (column: Column, { coat }: Row): number => (coat ? column.estimate(coat).error : 0);

/**
 * Rows with the best value of a column: all that their numerical errors leave in doubt. None where
 * there is nothing to choose between, or where each row is judged by a tolerance of its own.
 */
export function bestRows(column: Column, rows: readonly Row[]): ReadonlySet<string> {
  const known = rows.filter(counts);
  const isFair = column.key !== 'inside' || new Set(known.map(toleranceOf)).size <= 1;
  const [first, ...rest] = known;
  if (!first || rest.length === 0 || !isFair) return new Set();
  const best = rest.reduce((a, b) => (distanceOf(column, b) < distanceOf(column, a) ? b : a), first);
  const doubt = (row: Row): number =>
    errorOf(column, row) + errorOf(column, best) + SUMMING * Math.abs(distanceOf(column, row));
  const winners = known.filter((row) => distanceOf(column, row) - distanceOf(column, best) <= doubt(row));
  return new Set(winners.length === known.length ? [] : winners.map(({ id }) => id));
}

export const toleranceOf = ({ coat }: Row): string => (coat ? tolerance(coat.plant.film.tolerance) : '');

/** How the rows stand: by a column, best or worst first, or in the order of pinning. */
export interface Order {
  readonly key: string | null;
  readonly isWorstFirst: boolean;
}

/** The rows in an order; those without a coat come last. */
export function sortedRows<R extends Row>(rows: readonly R[], { key, isWorstFirst }: Order): readonly R[] {
  const column = COLUMNS.find((item) => item.key === key);
  if (!column) return rows;
  const known = rows.filter(({ coat }) => coat);
  const sorted = known.toSorted((a, b) => distanceOf(column, a) - distanceOf(column, b));
  return [...(isWorstFirst ? sorted.toReversed() : sorted), ...rows.filter(({ coat }) => !coat)];
}
