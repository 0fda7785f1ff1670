/** What the picture shows: the mapped quantity, the range of its colours, feeds and paths. */
import { MapControls } from '../charts/MapControls.tsx';
import { useResult } from '../state/resultStore.ts';
import { useVariants } from '../state/variants/variantStore.ts';
import { setSceneOptions, useSceneOptions, type SceneOptions } from './sceneOptions.ts';

function OptionBox({ name, label }: { readonly name: keyof SceneOptions; readonly label: string }) {
  const isOn = useSceneOptions((state) => state[name]);
  return (
    <label className="check">
      <input type="checkbox" checked={isOn} onChange={({ target }) => setSceneOptions({ [name]: target.checked })} />
      {label}
    </label>
  );
}

export function ScenePanel() {
  const coat = useResult((state) => state.coat);
  const hasVariants = useVariants((state) => state.variants.length > 0);
  return (
    <>
      {coat && <MapControls coat={coat} hasVariants={hasVariants} />}
      <OptionBox name="showsFeeds" label="Feeds by colour and number" />
      <OptionBox name="showsPaths" label="Paths from filaments to the probe" />
    </>
  );
}
