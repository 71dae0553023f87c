/*
 * The fonts of papers: one full family in two weights, and a second family for signs that the first does not hold.
 * Invariant: a glyph carries the characters it was asked for, so that every word can be read out of the file again.
 * Not here: sizes and colours (styles.ts), breaking of lines (typeset.ts).
 * Read next: typeset.ts.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import PDFDocument from 'pdfkit';
import { invariant } from '#lib/kernel/invariant.ts';

/** Names under which a document knows the fonts. */
export const FACES = {
  regular: { main: 'main', signs: 'signs' },
  bold: { main: 'main bold', signs: 'signs bold' },
} as const;
export type Weight = keyof typeof FACES;

const FILES = {
  main: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  'main bold': '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  signs: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf',
  'signs bold': 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf',
} as const;
type FaceName = keyof typeof FILES;
const FACE_NAMES: readonly FaceName[] = ['main', 'main bold', 'signs', 'signs bold'];

const bytes = new Map<FaceName, Buffer>();

/** Gives a document the fonts of the house. */
export function registerFonts(document: PDFKit.PDFDocument): void {
  for (const name of FACE_NAMES) {
    const file = bytes.get(name) ?? readFileSync(packageFile(FILES[name]));
    bytes.set(name, file);
    document.registerFont(name, file);
    keepCharacters(openFont(document, name));
  }
}

/** Whether the main family of a weight holds a character. */
export function mainHolds(character: string, weight: Weight): boolean {
  const key = `${weight}${character}`;
  const known = held.get(key);
  if (known !== undefined) return known;
  const holds = openFont(ruler(), FACES[weight].main).hasGlyphForCodePoint(character.codePointAt(0) ?? 0);
  held.set(key, holds);
  return holds;
}

const held = new Map<string, boolean>();

/** Width of a text set in one face at the size 1. */
export function widthInFace(text: string, face: string): number {
  return ruler().font(face).fontSize(1).widthOfString(text);
}

let measuring: PDFKit.PDFDocument | null = null;

/** A document that is never written: it only measures. */
function ruler(): PDFKit.PDFDocument {
  if (measuring !== null) return measuring;
  measuring = new PDFDocument({ autoFirstPage: false });
  registerFonts(measuring);
  return measuring;
}

interface Glyph {
  readonly codePoints: readonly number[];
}

interface OpenFont {
  getGlyph: (id: number, characters?: readonly number[]) => Glyph | null;
  hasGlyphForCodePoint: (code: number) => boolean;
}

function openFont(document: PDFKit.PDFDocument, name: FaceName): OpenFont {
  document.font(name);
  const inner: unknown = Reflect.get(document, '_font');
  const font: unknown = typeof inner === 'object' && inner !== null ? Reflect.get(inner, 'font') : null;
  invariant(isOpenFont(font), 'A registered font offers getGlyph and hasGlyphForCodePoint.');
  return font;
}

function isOpenFont(font: unknown): font is OpenFont {
  return (
    typeof font === 'object' &&
    font !== null &&
    'getGlyph' in font &&
    typeof font.getGlyph === 'function' &&
    'hasGlyphForCodePoint' in font
  );
}

/**
 * fontkit keeps one glyph object a glyph, with the characters of whoever asked first. A glyph first met as a part of another (the o of ó)
 * has none, and that letter is then missing from the text that can be read out of the file (fontkit issue 154).
 * So each call gets a glyph that carries the characters of that call.
 */
function keepCharacters(font: OpenFont): void {
  const original = font.getGlyph.bind(font);
  font.getGlyph = (id, characters = []) => {
    const glyph = original(id, characters);
    if (glyph === null || characters.length === 0 || sameCharacters(glyph.codePoints, characters)) return glyph;
    return Object.create(glyph, { codePoints: { value: characters, writable: true, enumerable: true } });
  };
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
