/** Heads of the three columns of rates, in every table that has them. */
export function RateHeads({ currency }: { readonly currency: string }) {
  return (
    <>
      <th scope="col" className="number">
        Day, {currency}
      </th>
      <th scope="col" className="number">
        Week
      </th>
      <th scope="col" className="number">
        Four weeks
      </th>
    </>
  );
}
