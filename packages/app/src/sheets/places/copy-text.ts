// Copies text to the clipboard. Over plain http there is no clipboard call; the old way by a selected
// field still works in most browsers.

/** True where it was copied. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(text);
  }
}

function copyBySelection(text: string): boolean {
  const field = document.createElement('textarea');
  const focused = document.activeElement;
  field.value = text;
  field.className = 'read-out';
  document.body.append(field);
  field.select();
  try {
    return document.execCommand('copy');
  } catch {
    return false;
  } finally {
    field.remove();
    if (focused instanceof HTMLElement) focused.focus();
  }
}
