/*
 * Measures of the house's papers: A4, calm margins, one accent tone, figures of equal width.
 * Invariant: every size that appears on a paper stands here.
 * Not here: colours by role (documents/paper-colours.ts).
 * Read next: block-views.tsx.
 */
import { StyleSheet } from '@react-pdf/renderer';
import { PAPER_COLOURS as INK } from '#lib/documents/paper-colours.ts';
import { FAMILY } from './fonts.ts';

export const PAGE = { width: 595.28, left: 42, right: 42, top: 60, bottom: 54 } as const;
export const CONTENT_WIDTH = PAGE.width - PAGE.left - PAGE.right;

export const S = StyleSheet.create({
  page: { fontFamily: FAMILY, fontSize: 9, lineHeight: 1.32, color: INK.text, paddingTop: PAGE.top, paddingBottom: PAGE.bottom, paddingLeft: PAGE.left, paddingRight: PAGE.right },
  runningHead: { position: 'absolute', top: 24, left: PAGE.left, right: PAGE.right, flexDirection: 'row', justifyContent: 'space-between', borderBottomWidth: 0.6, borderBottomColor: INK.axis, paddingBottom: 4 },
  runningText: { fontSize: 8, color: INK.muted },
  runningName: { fontSize: 8, fontWeight: 600 },
  foot: { position: 'absolute', bottom: 22, left: PAGE.left, right: PAGE.right, flexDirection: 'row', justifyContent: 'space-between', borderTopWidth: 0.6, borderTopColor: INK.grid, paddingTop: 4 },
  footWords: { fontSize: 7, color: INK.muted, width: '80%' },
  footPage: { fontSize: 7.5, color: INK.text, textAlign: 'right', width: '18%' },
  firstHead: { flexDirection: 'row', justifyContent: 'space-between', marginBottom: 12 },
  kind: { fontSize: 21, fontWeight: 600, lineHeight: 1.1 },
  kindRule: { height: 2.4, width: 36, backgroundColor: INK.accent, marginTop: 5, marginBottom: 6 },
  number: { fontSize: 10 },
  houseName: { fontSize: 10, fontWeight: 600, textAlign: 'right' },
  houseLine: { fontSize: 8, color: INK.muted, textAlign: 'right' },
  headBand: { flexDirection: 'row', borderTopWidth: 0.6, borderTopColor: INK.axis, borderBottomWidth: 0.6, borderBottomColor: INK.axis, paddingTop: 7, paddingBottom: 7, marginBottom: 10 },
  toName: { fontWeight: 600 },
  h1: { fontSize: 12.5, fontWeight: 600, marginTop: 12, marginBottom: 4, lineHeight: 1.2 },
  h2: { fontSize: 9.5, fontWeight: 600, marginTop: 8, marginBottom: 3, color: INK.accent },
  text: { marginBottom: 4 },
  muted: { color: INK.muted, marginBottom: 4, fontSize: 8 },
  strong: { fontWeight: 600, marginBottom: 4 },
  facts: { flexDirection: 'row', flexWrap: 'wrap', marginBottom: 4 },
  factLabel: { fontSize: 7.5, color: INK.muted },
  table: { marginBottom: 8, marginTop: 2 },
  headRow: { flexDirection: 'row', borderBottomWidth: 0.9, borderBottomColor: INK.axis, paddingBottom: 2, paddingTop: 2, backgroundColor: INK.paper },
  headCell: { fontSize: 7.5, fontWeight: 600, paddingRight: 5 },
  row: { borderBottomWidth: 0.35, borderBottomColor: INK.grid, paddingTop: 2.6, paddingBottom: 2.6 },
  rowCells: { flexDirection: 'row' },
  groupRow: { backgroundColor: INK.valve, paddingLeft: 3 },
  denseRow: { paddingTop: 1.6, paddingBottom: 1.6 },
  tallRow: { paddingTop: 5, paddingBottom: 9 },
  totalRow: { borderTopWidth: 0.9, borderTopColor: INK.axis },
  cell: { fontSize: 8.2, paddingRight: 5, lineHeight: 1.25 },
  rowNote: { fontSize: 7.5, color: INK.muted, paddingRight: 5, paddingTop: 1 },
  listItem: { flexDirection: 'row', marginBottom: 2 },
  marker: { width: 14, color: INK.accent, fontWeight: 600 },
  callout: { borderLeftWidth: 2.4, paddingLeft: 9, paddingTop: 4, paddingBottom: 3, marginTop: 6, marginBottom: 8 },
  calloutTitle: { fontWeight: 600, marginBottom: 2 },
  pair: { flexDirection: 'row', marginBottom: 4 },
  drawing: { marginTop: 4, marginBottom: 4 },
  blanks: { flexDirection: 'row', flexWrap: 'wrap', marginTop: 2, marginBottom: 4 },
  blank: { paddingRight: 10, marginBottom: 7 },
  blankLabel: { fontSize: 7.5, color: INK.muted },
  blankLine: { borderBottomWidth: 0.6, borderBottomColor: INK.axis, height: 14 },
  party: { flexGrow: 1, flexBasis: 0, paddingRight: 24 },
  barcode: { alignItems: 'flex-start', marginBottom: 6 },
  barcodeText: { fontSize: 8, marginTop: 2 },
});
