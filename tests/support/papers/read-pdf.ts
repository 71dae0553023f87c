/** Reads PDFs back with poppler's own tools, as anyone who searches or copies from them would. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export interface ReadPdf {
  readonly text: string;
  readonly words: ReadonlySet<string>;
  readonly pages: number;
  /** One entry a font: its name and whether it is embedded. */
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
  readonly info: string;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
  const folder = mkdtempSync(path.join(tmpdir(), 'kitwright-paper-'));
  try {
    const file = path.join(folder, 'paper.pdf');
    writeFileSync(file, bytes);
    const run = (tool: string, args: readonly string[]) => execFileSync(tool, [...args], { encoding: 'utf8' });
    const text = run('pdftotext', ['-layout', file, '-']);
    const info = run('pdfinfo', [file]);
    const fonts = run('pdffonts', [file])
      .split('\n')
      .slice(2)
      .filter((row) => row.trim() !== '')
      .map((row) => ({ name: row.slice(0, 36).trim(), embedded: / yes (yes|no) (yes|no) /.test(row) }));
    return { text, words: new Set(text.split(/\s+/)), pages: Number(/Pages:\s+(\d+)/.exec(info)?.[1]), fonts, info };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
