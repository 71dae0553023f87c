'use client';

import type { ChangeEvent } from 'react';
import { currencyDecimals } from '#lib/money/currency.ts';
import { readAmount } from '#lib/money/read-amount.ts';

interface AmountFieldProps {
  readonly label: string;
  readonly name: string;
  readonly currency: string;
}

/** An amount in a currency, with as many decimals as it has; what cannot be read is told before it is sent. */
export function AmountField({ label, name, currency }: AmountFieldProps) {
  const decimals = currencyDecimals(currency);
  const check = ({ currentTarget: field }: ChangeEvent<HTMLInputElement>): void => {
    const isSound = field.value.trim() === '' || readAmount(field.value, currency) !== null;
    field.setCustomValidity(
      isSound
        ? ''
        : `Write an amount in ${currency} with ${decimals === 0 ? 'no decimals' : `at most ${decimals} decimals`}.`,
    );
  };
  return (
    <label>
      {label}, {currency}
      <input
        name={name}
        inputMode={decimals === 0 ? 'numeric' : 'decimal'}
        autoComplete="off"
        placeholder={decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`}
        onChange={check}
      />
    </label>
  );
}

interface Amount {
  readonly form: FormData;
  readonly name: string;
  readonly currency: string;
}

/** Minor units of what was typed; nought where nothing was. */
export function amountIn({ form, name, currency }: Amount): number {
  return readAmount(String(form.get(name) ?? ''), currency) ?? 0;
}
