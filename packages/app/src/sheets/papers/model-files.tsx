// The files of a model to save: all as one zip, or one by one.

import type { NamedFile } from '@shellraise/core';
import { download, fileName } from '../../files/save-file.ts';
import { useWords } from '../../words/words.ts';

/** The ways to save; `zip`: all files. */
export function ModelFiles({
  files,
  zip,
  name,
}: {
  files: readonly NamedFile[];
  zip: Uint8Array;
  name: string;
}) {
  const words = useWords().patterns;
  return (
    <>
      <p>
        <button
          type="button"
          onClick={() => download(`${fileName(name)}.zip`, zip, 'application/zip')}
        >
          {words.saveAll}
        </button>
      </p>
      <details className="model-files">
        <summary>{words.files(files.length)}</summary>
        <ul>
          {files.map(({ name: one, text }) => (
            <li key={one}>
              <button
                type="button"
                aria-label={words.save(one)}
                onClick={() => download(one, text, typeOf(one))}
              >
                {one}
              </button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

const types: Readonly<Record<string, string>> = {
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  stl: 'model/stl',
  '3mf': 'model/3mf',
  glb: 'model/gltf-binary',
};

const typeOf = (name: string): string =>
  types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
