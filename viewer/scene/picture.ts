/** What the picture shows at this moment, gathered from the stores; its parts follow it without React. */
import { create } from 'zustand';
import type { Coat, DesignFile, Plant, ProbeReading } from '../../engine/index.ts';
import { mapFieldOf, type MapField } from '../format/mapField.ts';
import { useDesign } from '../state/designStore.ts';
import { useMapView, type ColorRange, type MappedQuantity } from '../state/mapView.ts';
import { useProbe } from '../state/probeStore.ts';
import { useResult } from '../state/resultStore.ts';
import { useSelection, type Part } from '../state/selection.ts';
import type { Colors } from '../state/useColors.ts';
import { scaleOf, type ColorScale } from './colorScale.ts';
import { useSceneOptions, type SceneOptions } from './sceneOptions.ts';

/** Lowest and highest value of a range of colours, in the unit of the field. */
export type Range = readonly [low: number, high: number];

export interface Picture {
  /** as designed now; ahead of the coat while it is worked out */
  readonly plant: Plant;
  readonly file: DesignFile;
  readonly coat: Coat;
  /** the quantity that is drawn: thickness until the coat has the one that was asked for */
  readonly quantity: MappedQuantity;
  readonly field: MapField;
  readonly scale: ColorScale;
  readonly selected: readonly Part[];
  readonly options: SceneOptions;
  readonly reading: ProbeReading | null;
  readonly colors: Colors;
}

export const usePicture = create<{ readonly picture: Picture | null }>(() => ({ picture: null }));

interface Painted {
  readonly coat: Coat;
  readonly asked: MappedQuantity;
  readonly range: ColorRange;
  readonly fromZero: boolean;
  readonly shared: Range | undefined;
  readonly quantity: MappedQuantity;
  readonly field: MapField;
  readonly scale: ColorScale;
}

/** Field and scale of a coat; the last ones if nothing about them has changed. */
function paint(last: Painted | null, coat: Coat, fromZero: boolean, variants: Range | undefined): Painted {
  const { quantity: asked, range } = useMapView.getState();
  const shared = range.mode === 'shared' ? variants : undefined;
  const isSame = last?.coat === coat && last.asked === asked && last.range === range;
  if (isSame && last.fromZero === fromZero && last.shared === shared) return last;
  const wanted = mapFieldOf(coat, asked);
  const quantity = wanted ? asked : 'thickness';
  const field = wanted ?? mapFieldOf(coat, 'thickness');
  if (!field) throw new Error('expected every coat to have a thickness');
  const scale = scaleOf(field.values, range, { fromZero: fromZero && quantity === 'thickness', shared });
  return { coat, asked, range, fromZero, shared, quantity, field, scale };
}

/** What the page gives to the picture beside the stores. */
interface Setting {
  readonly colors: Colors | null;
  readonly shared: Range | undefined;
}

const useSetting = create<Setting>(() => ({ colors: null, shared: undefined }));

/** Changes the theme's colours, or the range that all variants share. */
export function setPicture(colors: Colors, shared: Range | undefined): void {
  useSetting.setState({ colors, shared });
}

/** Keeps the picture up to date; returns how to stop. */
export function followStores(): () => void {
  let painted: Painted | null = null;
  const compose = (): void => {
    const { coat } = useResult.getState();
    const { colors, shared } = useSetting.getState();
    if (!coat || !colors) return;
    const options = useSceneOptions.getState();
    painted = paint(painted, coat, options.fromZero, shared);
    const { plant, file } = useDesign.getState().current;
    const { quantity, field, scale } = painted;
    const { parts: selected } = useSelection.getState();
    const { reading } = useProbe.getState();
    usePicture.setState({
      picture: { plant, file, coat, quantity, field, scale, selected, options, reading, colors },
    });
  };
  compose();
  const stops = [useSetting, useDesign, useResult, useSelection, useSceneOptions, useMapView, useProbe].map((store) =>
    store.subscribe(compose),
  );
  return () => stops.forEach((stop) => stop());
}
