/** The keys that the plant tree understands, for the page's table of keys. */
export const plantKeys: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: '↑ ↓', does: 'select the part above or below' },
  { keys: '→ ←', does: 'open and enter a branch; close or leave it' },
  { keys: 'Home, End', does: 'go to the first or last part' },
  { keys: 'Page up, Page down', does: 'go ten parts up or down' },
  { keys: '*', does: 'open all branches beside this one' },
  { keys: 'letters', does: 'go to the next part whose name begins with them' },
  { keys: 'Shift+↑ ↓', does: 'select from the last chosen part to here' },
  { keys: 'Ctrl+↑ ↓', does: 'move without selecting' },
  { keys: 'Ctrl+Space', does: 'add a part to the selection, or take it out' },
  { keys: 'Ctrl+A', does: 'select all parts beside this one' },
  { keys: 'F2', does: 'rename' },
  { keys: 'Insert', does: 'add a part to this branch' },
  { keys: 'Ctrl+D', does: 'duplicate' },
  { keys: 'Delete', does: 'delete the selected parts' },
  { keys: 'X', does: 'mark the selected filaments, sets or feeds as out of use, or in use again' },
  { keys: 'Escape', does: 'select nothing: the form shows the plant’s name' },
];
