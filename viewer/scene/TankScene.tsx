/** Everything inside the canvas. */
import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { Coat } from '../../engine/index.ts';
import type { Colors } from '../state/useColors.ts';
import { CoatMesh } from './CoatMesh.tsx';
import type { ColorScale } from './colorScale.ts';
import { FilamentCoils } from './FilamentCoils.tsx';
import { GlassBody } from './GlassBody.tsx';
import { Obstacles } from './Obstacles.tsx';
import { TankShell } from './TankShell.tsx';
import { ToleranceLines } from './ToleranceLines.tsx';
import { Witnesses } from './Witnesses.tsx';

interface TankSceneProps {
  readonly coat: Coat;
  readonly scale: ColorScale;
  readonly colors: Colors;
}

export function TankScene({ coat, scale, colors }: TankSceneProps) {
  const invalidate = useThree((state) => state.invalidate);
  const { plant } = coat;
  useEffect(() => invalidate(), [coat, scale, colors, invalidate]);
  return (
    <>
      <hemisphereLight args={['#ffffff', '#a0a0a0', 2.2]} position={[0, 0, 1]} />
      <directionalLight position={[-2, -4, 6]} intensity={1.2} />
      <TankShell plant={plant} colors={colors} />
      <GlassBody shape={plant.shape} colors={colors} />
      <CoatMesh coat={coat} scale={scale} />
      <ToleranceLines coat={coat} />
      <Obstacles plant={plant} colors={colors} />
      <Witnesses plant={plant} colors={colors} />
      <FilamentCoils plant={plant} colors={colors} />
    </>
  );
}
