/*
 * Opens a PDF whose bytes depend on what is drawn alone, and gathers them: A4, no margin, dates of its own.
 * Invariant: both dates inside the file are the day at which the paper was fixed, never the clock.
 * Not here: what is drawn on it (render-paper.ts, render-labels.ts, render-case-labels.ts).
 * Read next: pen.ts.
 */
import PDFDocument from 'pdfkit';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { registerFonts } from './fonts.ts';
import { openPen, type Pen } from './pen.ts';

export interface DocumentFacts {
  readonly title: string;
  /** The house. */
  readonly author: string;
  readonly subject: string;
  readonly fixedAt: IsoDate;
}

export interface OpenedDocument {
  readonly document: PDFKit.PDFDocument;
  readonly pen: Pen;
  /** Settles once the document was ended. */
  readonly written: Promise<Uint8Array>;
}

export function openDocument({ title, author, subject, fixedAt }: DocumentFacts): OpenedDocument {
  const fixed = new Date(`${fixedAt}T00:00:00Z`);
  const info = { Title: title, Author: author, Subject: subject, Creator: 'Kitwright', Producer: 'Kitwright' };
  const document = new PDFDocument({
    size: 'A4',
    margin: 0,
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: 'en-GB',
    displayTitle: true,
    info: { ...info, CreationDate: fixed, ModDate: fixed },
  });
  const written = bytesOf(document);
  registerFonts(document);
  return { document, pen: openPen(document), written };
}

function bytesOf(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Buffer) => chunks.push(chunk));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    document.on('error', reject);
  });
}
