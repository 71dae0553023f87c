export interface CustomersAddress {
  readonly words: string;
  readonly archived: 'yes' | 'no';
  readonly page: number;
}

export function customersAddress({ words, archived, page }: CustomersAddress): string {
  const query = new URLSearchParams();
  if (words !== '') query.set('q', words);
  if (archived === 'yes') query.set('archived', 'yes');
  if (page > 1) query.set('page', String(page));
  return query.size === 0 ? '/customers' : `/customers?${query}`;
}
