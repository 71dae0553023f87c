/*
 * What a return is charged from and what it was charged, as plain facts for a second reckoning.
 * Invariant: nothing of the pricing stands here but the shape of what it asks and answers.
 * Not here: reckoning it again (check-return.ts).
 * Read next: check-return.ts.
 */
export interface CheckedReturn {
  readonly terms: {
    readonly currency: string;
    readonly taxCategories: readonly {
      readonly code: string;
      readonly name: string;
      readonly percent: number;
      readonly reason?: string;
    }[];
    readonly taxOf: Readonly<Record<'hire' | 'waiver' | 'sale' | 'labour', string>>;
    readonly waiver: { readonly percent: number };
    readonly unusedReturnCreditPercent: number;
  };
  readonly rates: {
    readonly workshop_minor_per_hour: number | null;
    readonly cleaning_minor: Readonly<Record<string, number | undefined>>;
  };
  readonly waiver: 'taken' | 'declined';
  readonly facts: readonly CheckedFact[];
}

interface About {
  readonly about: string;
}

interface Caused {
  readonly replacement_minor: number;
  readonly cause: { readonly kind: 'not known' | 'covered' | 'left out' };
}

export type CheckedFact =
  | (About & { readonly kind: 'hire'; readonly quoted_minor: number; readonly charged_minor: number })
  | (About & { readonly kind: 'cleaning'; readonly soil: string })
  | (About & Caused & { readonly kind: 'repair'; readonly hours: number; readonly parts_minor: number })
  | (About & Caused & { readonly kind: 'loss'; readonly count: number })
  | (About & {
      readonly kind: 'sold';
      readonly quoted: number;
      readonly used: number;
      readonly price_minor: number;
    })
  | (About & { readonly kind: 'found'; readonly charged_minor: number; readonly hire_minor: number });

/** The figures of a line; its words are not looked at. */
export interface ChargeFigures {
  readonly kind: string;
  readonly about: string;
  readonly quantity: number;
  readonly unit_minor: number;
  readonly net_minor: number;
  readonly tax: string;
}

export interface ReturnFigures {
  readonly currency: string;
  readonly lines: readonly ChargeFigures[];
  readonly taxes: readonly {
    readonly code: string;
    readonly percent: number;
    readonly taxable_minor: number;
    readonly tax_minor: number;
  }[];
  readonly net_minor: number;
  readonly tax_minor: number;
  readonly gross_minor: number;
}
