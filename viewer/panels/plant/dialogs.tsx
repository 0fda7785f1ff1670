/** The dialogs of the plant: their code comes when they are opened. */
import type { ComponentProps } from 'react';
import { useLoaded } from '../useOnDemand.ts';
import type { FilamentTablePaste } from './FilamentTablePaste.tsx';
import type { MeshPick } from './MeshPick.tsx';

export function TableDialog(props: ComponentProps<typeof FilamentTablePaste>) {
  const Content = useLoaded(
    'The dialog for tables cannot be loaded',
    async () => (await import('./FilamentTablePaste.tsx')).FilamentTablePaste,
    props.onClose,
  );
  return Content && <Content {...props} />;
}

export function MeshDialog(props: ComponentProps<typeof MeshPick>) {
  const Content = useLoaded(
    'The dialog for meshes cannot be loaded',
    async () => (await import('./MeshPick.tsx')).MeshPick,
    props.onClose,
  );
  return Content && <Content {...props} />;
}
