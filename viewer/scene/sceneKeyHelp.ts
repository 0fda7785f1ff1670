/** The keys of the picture, for the list of all keys. */
export const SCENE_KEYS_TITLE = 'In the picture of the tank';

export const SCENE_KEY_HELP = [
  { keys: '1, 2, 3, 4', does: 'Look from the front, the side, the mirror, or freely' },
  { keys: '0 or Home', does: 'Show the first view again' },
  { keys: 'N, Shift+N', does: 'Select the next part, or the one before' },
  { keys: 'S', does: 'Select the set of the selected filament' },
  { keys: 'Escape', does: 'Select nothing' },
  {
    keys: 'Alt+arrow keys',
    does: 'Move the selected part along x and y, or a ring’s diameter; with Shift a tenth as far',
  },
  { keys: 'Alt+Page Up, Alt+Page Down', does: 'Move it along z' },
] as const;
