/*
 * Every kind of block of a paper as PDF elements.
 * Invariant: a table row is never cut in two; a table's head is repeated on every page it reaches.
 * Not here: page head and foot (render-paper.tsx).
 * Read next: table-view.tsx, drawing-view.tsx.
 */
/** @jsxRuntime automatic */
import { Text, View } from '@react-pdf/renderer';
import type { ReactNode } from 'react';
import type { Block, LabelledText } from '#lib/documents/paper.ts';
import { PAPER_COLOURS as INK } from '#lib/documents/paper-colours.ts';
import { unreachable } from '#lib/kernel/invariant.ts';
import { barcodeDrawing } from './barcode-drawing.ts';
import { DrawingView } from './drawing-view.tsx';
import { CONTENT_WIDTH, S } from './styles.ts';
import { TableView } from './table-view.tsx';

export function blockViews(blocks: readonly Block[], width: number = CONTENT_WIDTH): ReactNode {
  return blocks.map((block, index) => blockView(block, { key: index, width }));
}

interface Place {
  readonly key: number;
  readonly width: number;
}

function blockView(block: Block, place: Place): ReactNode {
  const { key, width } = place;
  switch (block.kind) {
    case 'heading':
      return (
        <Text key={key} style={block.level === 1 ? S.h1 : S.h2} minPresenceAhead={90}>
          {block.text}
        </Text>
      );
    case 'text':
      return (
        <Text key={key} style={block.tone === 'plain' ? S.text : block.tone === 'muted' ? S.muted : S.strong}>
          {block.text}
        </Text>
      );
    case 'facts':
      return <FactsView key={key} items={block.items} columns={block.columns} />;
    case 'table':
      return <TableView key={key} table={block} />;
    case 'list':
      return (
        <View key={key} style={{ paddingBottom: 4 }}>
          {block.items.map((item, index) => (
            <MarkedItem key={item} marker={markerOf(block.marker, index)} text={item} />
          ))}
        </View>
      );
    case 'callout':
      return <CalloutView key={key} block={block} />;
    case 'drawing':
      return (
        <View key={key} style={S.drawing} wrap={false}>
          <DrawingView drawing={block.drawing} width={width * block.share} />
        </View>
      );
    case 'pair':
      return (
        <View key={key} style={S.pair}>
          <View style={{ width: width * block.leftShare - 8, marginRight: 16 }}>
            {blockViews(block.left, width * block.leftShare - 8)}
          </View>
          <View style={{ width: width * (1 - block.leftShare) - 8 }}>
            {blockViews(block.right, width * (1 - block.leftShare) - 8)}
          </View>
        </View>
      );
    case 'blanks':
      return <BlanksView key={key} items={block.items} columns={block.columns} />;
    case 'signatures':
      return <SignaturesView key={key} parties={block.parties} />;
    case 'barcode':
      return <BarcodeView key={key} text={block.text} />;
    case 'together':
      return (
        <View key={key} wrap={false}>
          {blockViews(block.blocks, width)}
        </View>
      );
    case 'page break':
      return <View key={key} break />;
    default:
      return unreachable(block);
  }
}

export function FactsView({ items, columns }: { readonly items: readonly LabelledText[]; readonly columns: number }) {
  return (
    <View style={S.facts}>
      {items.map((item) => (
        <View key={item.label} style={{ width: `${100 / columns}%`, paddingRight: 10, marginBottom: 4 }}>
          <Text style={S.factLabel}>{item.label}</Text>
          <Text>{item.value}</Text>
        </View>
      ))}
    </View>
  );
}

function markerOf(marker: 'dot' | 'number' | 'box', index: number): string {
  return marker === 'number' ? `${index + 1}` : marker === 'box' ? '☐' : '·';
}

function MarkedItem({ marker, text }: { readonly marker: string; readonly text: string }) {
  return (
    <View style={S.listItem} wrap={false}>
      <Text style={S.marker}>{marker}</Text>
      <Text style={{ flex: 1 }}>{text}</Text>
    </View>
  );
}

/** The sign before the title tells the tone where colour does not. */
const TONES = {
  caution: { sign: '▲', colour: INK.warning },
  refusal: { sign: '■', colour: INK.warning },
  note: { sign: '●', colour: INK.accent },
} as const;

function CalloutView({ block }: { readonly block: Extract<Block, { kind: 'callout' }> }) {
  const tone = TONES[block.tone];
  return (
    <View style={[S.callout, { borderLeftColor: tone.colour }]} wrap={block.items.length > 8}>
      <Text style={[S.calloutTitle, { color: tone.colour }]}>{`${tone.sign} ${block.title}`}</Text>
      {block.items.map((item) => (
        <MarkedItem key={item} marker="·" text={item} />
      ))}
    </View>
  );
}

function BlanksView({ items, columns }: { readonly items: readonly string[]; readonly columns: number }) {
  return (
    <View style={S.blanks}>
      {items.map((label) => (
        <View key={label} style={[S.blank, { width: `${100 / columns}%` }]} wrap={false}>
          <Text style={S.blankLabel}>{label}</Text>
          <View style={S.blankLine} />
        </View>
      ))}
    </View>
  );
}

function SignaturesView({
  parties,
}: {
  readonly parties: readonly { readonly title: string; readonly lines: readonly string[] }[];
}) {
  return (
    <View style={[S.pair, { marginTop: 6 }]} wrap={false}>
      {parties.map((party) => (
        <View key={party.title} style={S.party}>
          <Text style={S.strong}>{party.title}</Text>
          {party.lines.map((label) => (
            <View key={label} style={{ marginBottom: 8 }}>
              <View style={[S.blankLine, { height: 18 }]} />
              <Text style={S.blankLabel}>{label}</Text>
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

function BarcodeView({ text }: { readonly text: string }) {
  const drawing = barcodeDrawing(text);
  return (
    <View style={S.barcode}>
      <DrawingView drawing={drawing} width={drawing.width} />
      <Text style={S.barcodeText}>{text}</Text>
    </View>
  );
}
