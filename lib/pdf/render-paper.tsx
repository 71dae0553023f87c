/*
 * A paper as PDF bytes: A4, head of the house on the first page, running head, page n of m.
 * Invariant: the same paper gives the same bytes; dates inside the file are the paper's own.
 * Not here: what the paper says (documents); the thread it is drawn in (workers).
 * Read next: block-views.tsx, fonts.ts.
 */
/** @jsxRuntime automatic */
import { Document, Page, renderToBuffer, Text, View } from '@react-pdf/renderer';
import type { Paper } from '#lib/documents/paper.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { blockViews, FactsView } from './block-views.tsx';
import { loadFonts } from './fonts.ts';
import { S } from './styles.ts';

export async function renderPaper(paper: Paper): Promise<Uint8Array> {
  invariant(isIsoDate(paper.fixedAt), `A paper is fixed at a calendar date, not ${paper.fixedAt}.`);
  await loadFonts();
  return new Uint8Array(await renderToBuffer(<PaperView paper={paper} />));
}

function PaperView({ paper }: { readonly paper: Paper }) {
  const fixed = new Date(`${paper.fixedAt}T00:00:00Z`);
  return (
    <Document
      title={`${paper.title} ${paper.number}`}
      author={paper.house.name}
      subject={paper.kind}
      creator="Kitwright"
      producer="Kitwright"
      language="en-GB"
      creationDate={fixed}
      modificationDate={fixed}
    >
      <Page size="A4" style={S.page} experimentalPagination>
        <View style={S.runningHead} fixed>
          <Text style={S.runningName}>{paper.house.name}</Text>
          <Text style={S.runningText}>{`${paper.title} ${paper.number}`}</Text>
        </View>
        <View style={S.foot} fixed>
          <Text style={S.footWords}>{paper.foot}</Text>
          <Text style={S.footPage} render={({ pageNumber, totalPages }) => `Page ${pageNumber} of ${totalPages}`} />
        </View>
        <FirstHead paper={paper} />
        {blockViews(paper.blocks)}
      </Page>
    </Document>
  );
}

function FirstHead({ paper }: { readonly paper: Paper }) {
  const [name, ...address] = paper.to;
  return (
    <View>
      <View style={S.firstHead}>
        <View>
          <Text style={S.kind}>{paper.title}</Text>
          <View style={S.kindRule} />
          <Text style={S.number}>{paper.number}</Text>
        </View>
        <View>
          <Text style={S.houseName}>{paper.house.name}</Text>
          {paper.house.lines.map((line) => (
            <Text key={line} style={S.houseLine}>
              {line}
            </Text>
          ))}
        </View>
      </View>
      <View style={S.headBand}>
        <View style={{ width: '38%', paddingRight: 12 }}>
          <Text style={S.factLabel}>For</Text>
          <Text style={S.toName}>{name ?? ''}</Text>
          {address.map((line) => (
            <Text key={line}>{line}</Text>
          ))}
        </View>
        <View style={{ width: '62%' }}>
          <FactsView items={paper.facts} columns={2} />
        </View>
      </View>
    </View>
  );
}
