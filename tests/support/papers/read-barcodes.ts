/** Reads the barcodes of a PDF back from its rendered pages with a decoder that is not ours, as a reader in the yard would. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader';

export interface PrintedBarcode {
  /** Counted from 1. */
  readonly page: number;
  /** Code128 or QRCode. */
  readonly format: string;
  readonly text: string;
}

/** The decoder would fetch its program from the net; here it is read from the package. */
const PROGRAM = readFileSync(fileURLToPath(import.meta.resolve('zxing-wasm/reader/zxing_reader.wasm')));

/** Printed upright and black on white: what a reader tries for dirty or turned labels would only take time. */
const READING = {
  formats: ['Code128', 'QRCode'],
  maxNumberOfSymbols: 255,
  tryInvert: false,
  tryRotate: false,
  tryDownscale: false,
  tryDenoise: false,
} satisfies ReaderOptions;

/** All Code 128 and QR symbols, page by page, from the top down; 200 dots an inch is a plain office printer's draft. */
export async function readPrintedBarcodes(pdf: Uint8Array, dotsPerInch = 200): Promise<readonly PrintedBarcode[]> {
  const wasmBinary = new Uint8Array(PROGRAM).buffer;
  await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true });
  const found: PrintedBarcode[] = [];
  for (const [index, png] of renderPages(pdf, dotsPerInch).entries()) {
    const symbols = await readBarcodes(png, READING);
    const downwards = symbols.toSorted(
      (one, other) =>
        one.position.topLeft.y - other.position.topLeft.y || one.position.topLeft.x - other.position.topLeft.x,
    );
    found.push(...downwards.map(({ format, text }) => ({ page: index + 1, format, text })));
  }
  return found;
}

function renderPages(pdf: Uint8Array, dotsPerInch: number): readonly Uint8Array[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'kitwright-pages-'));
  try {
    writeFileSync(path.join(folder, 'paper.pdf'), pdf);
    execFileSync('pdftoppm', ['-r', String(dotsPerInch), '-gray', '-png', 'paper.pdf', 'page'], { cwd: folder });
    return readdirSync(folder)
      .filter((name) => name.endsWith('.png'))
      .sort()
      .map((name) => readFileSync(path.join(folder, name)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
