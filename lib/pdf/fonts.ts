/*
 * The fonts of papers: one full family in two weights, and a second family for signs that the first does not hold.
 * Invariant: a glyph carries the characters it was asked for in this very document, whatever other documents were drawn before.
 * Not here: sizes and colours (styles.ts).
 * Read next: render-paper.tsx.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Font } from '@react-pdf/renderer';
import { invariant } from '#lib/kernel/invariant.ts';

export const FAMILY = ['Source Sans 3', 'DejaVu Sans'];

const FILES = [
  {
    family: 'Source Sans 3',
    weight: 400,
    file: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  },
  {
    family: 'Source Sans 3',
    weight: 600,
    file: '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  },
  { family: 'DejaVu Sans', weight: 400, file: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf' },
  { family: 'DejaVu Sans', weight: 600, file: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf' },
] as const;

let ready: Promise<void> | null = null;

export function loadFonts(): Promise<void> {
  ready ??= load();
  return ready;
}

async function load(): Promise<void> {
  for (const { family, weight, file } of FILES) Font.register({ family, fontWeight: weight, src: packageFile(file) });
  Font.registerHyphenationCallback((word) => [word]);
  for (const { family, weight } of FILES) {
    const descriptor = { fontFamily: family, fontWeight: weight };
    await Font.load(descriptor);
    const loaded: unknown = Font.getFont(descriptor)?.data;
    keepCharacters(loaded);
  }
}

/**
 * fontkit keeps one glyph object a glyph for the life of the process, with the characters of whoever asked first. A glyph first met as a
 * part of another (the o of ó) has none, and every later document then loses that letter from its extractable text (fontkit issue 154).
 * So each call gets a glyph that carries the characters of that call.
 */
function keepCharacters(font: unknown): void {
  invariant(isGlyphFont(font), 'A registered font offers getGlyph(id, characters).');
  const original = font.getGlyph.bind(font);
  font.getGlyph = (id, characters = []) => {
    const glyph = original(id, characters);
    if (glyph === null || characters.length === 0 || sameCharacters(glyph.codePoints, characters)) return glyph;
    return Object.create(glyph, { codePoints: { value: characters, writable: true, enumerable: true } });
  };
}

interface Glyph {
  codePoints: readonly number[];
}

interface GlyphFont {
  getGlyph: (id: number, characters?: readonly number[]) => Glyph | null;
}

function isGlyphFont(font: unknown): font is GlyphFont {
  return typeof font === 'object' && font !== null && 'getGlyph' in font && typeof font.getGlyph === 'function';
}

function sameCharacters(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((code, index) => code === b[index]);
}

/** A file of a package, found from the working folder or from this file upwards (a bundle keeps neither its place nor its neighbours). */
function packageFile(file: string): string {
  const starts = [process.cwd(), ...ownFolder()];
  for (const start of starts) {
    for (let folder = start; ; folder = path.dirname(folder)) {
      const candidate = path.join(/* turbopackIgnore: true */ folder, 'node_modules', file);
      if (existsSync(candidate)) return candidate;
      if (path.dirname(folder) === folder) break;
    }
  }
  invariant(false, `The font ${file} is not installed; run npm ci.`);
}

function ownFolder(): readonly string[] {
  return import.meta.url.startsWith('file:') ? [path.dirname(fileURLToPath(import.meta.url))] : [];
}
