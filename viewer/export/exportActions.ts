/** Everything that can be saved of a coat. */
import type { Coat } from '../../engine/index.ts';
import { mapFieldOf } from '../format/mapField.ts';
import { scaleOf, type SharedRange } from '../format/mapScale.ts';
import type { MapView } from '../state/mapView.ts';
import type { Units } from '../state/units.ts';
import { exportChartPng, exportChartSvg, type ChartName } from './chartFiles.ts';
import { exportMapPng, exportMapSvg } from './mapFile.ts';
import type { FileKind } from './fileKinds.ts';
import { exportTable, type TableName } from './tableFiles.ts';

/** A coat and how the page shows it. */
export interface ExportSource {
  readonly coat: Coat;
  readonly view: MapView;
  readonly units: Units;
  readonly sharedRange?: SharedRange;
}

export interface ExportAction {
  /** goes into the file's name */
  readonly what: string;
  readonly kind: FileKind;
  readonly make: (source: ExportSource) => Promise<Blob>;
}

export interface ExportGroup {
  readonly title: string;
  readonly actions: readonly ExportAction[];
}

/** Words for the files' names. */
const FILE_NAMES: Readonly<Record<ChartName, string>> = { profile: 'radial-profile', histogram: 'area-by-thickness' };

const chart = (name: ChartName): ExportAction[] => [
  { what: FILE_NAMES[name], kind: 'png', make: async ({ coat, units }) => exportChartPng(name, coat, units) },
  { what: FILE_NAMES[name], kind: 'svg', make: async ({ coat, units }) => exportChartSvg(name, coat, units) },
];

const table = (name: TableName): ExportAction => ({
  what: name,
  kind: 'csv',
  make: async ({ coat }) => exportTable(name, coat),
});

/** The scene in 3D; its code is loaded when it is asked for. */
async function exportScene({ coat, view, sharedRange }: ExportSource): Promise<Blob> {
  const [{ coatScene }, { sceneGlb }] = await Promise.all([import('./coatScene.ts'), import('./sceneFile.ts')]);
  const field = mapFieldOf(coat, view.quantity);
  if (!field) throw new Error('the coat was computed without arrival angles; choose the thickness or its deviation');
  const scale = scaleOf(field.values, view, sharedRange);
  return sceneGlb(coatScene(coat, { values: field.values, scale, label: `${field.label}, ${field.unit}` }));
}

/** What can be saved of this coat, in groups. */
export function exportGroups({ plant }: Coat): ExportGroup[] {
  return [
    {
      title: 'Map',
      actions: [
        { what: 'map', kind: 'png', make: exportMapPng },
        { what: 'map', kind: 'svg', make: exportMapSvg },
      ],
    },
    { title: 'Radial profile', actions: [...chart('profile'), table('radial-profile')] },
    { title: 'Area by thickness', actions: chart('histogram') },
    { title: 'Thickness at all points', actions: [table('thickness')] },
    ...(plant.witnesses.length > 0 ? [{ title: 'Witnesses', actions: [table('witnesses')] }] : []),
    { title: '3D scene', actions: [{ what: 'scene', kind: 'glb', make: exportScene }] },
  ];
}
