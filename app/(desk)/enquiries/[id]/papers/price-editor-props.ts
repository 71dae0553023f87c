import type { PriceView } from '#lib/services/quotes/price-view.ts';
import type { usePriceChoices } from './use-price-choices.client.ts';

export interface EditorProps {
  readonly enquiryId: number;
  readonly view: Pick<PriceView, 'currency' | 'limit' | 'agreed' | 'priceList' | 'taxes' | 'taxOf' | 'shown'>;
}

export type Kept = ReturnType<typeof usePriceChoices>;
