// Asks the person for files, and hears files that are dropped anywhere on the page.

const TABLES = '.json,.csv,.tsv,.txt,application/json,text/csv';

/** Asks for files of these sorts; none where the person thinks better of it. */
export function chooseFiles(accept = TABLES): Promise<readonly File[]> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.multiple = true;
    input.accept = accept;
    input.addEventListener('change', () => resolve([...(input.files ?? [])]));
    input.addEventListener('cancel', () => resolve([]));
    input.click();
  });
}

/** Tells of files held over the page and of those let go. Returns the way to stop. */
export function hearDrops(
  held: (over: boolean) => void,
  dropped: (files: readonly File[]) => void,
): () => void {
  const stop = new AbortController();
  const options = { signal: stop.signal };
  const hasFiles = (event: DragEvent): boolean =>
    event.dataTransfer?.types.includes('Files') ?? false;
  addEventListener(
    'dragover',
    (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      held(true);
    },
    options,
  );
  addEventListener('dragleave', (event) => event.relatedTarget === null && held(false), options);
  addEventListener(
    'drop',
    (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      held(false);
      dropped([...(event.dataTransfer?.files ?? [])]);
    },
    options,
  );
  return () => stop.abort();
}
