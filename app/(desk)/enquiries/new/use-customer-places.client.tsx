'use client';

import { useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { CustomerView } from '#lib/services/customers/open-customer.ts';

type Places = Pick<CustomerView, 'sites' | 'contacts'>;

const NONE: Places = { sites: [], contacts: [] };

/** Sites and contacts in use of a customer; none while it is not known. */
export function useCustomerPlaces(customerId: number | null): Places {
  const [places, setPlaces] = useState(NONE);
  useEffect(() => {
    setPlaces(NONE);
    if (customerId === null) return;
    let isNewest = true;
    send<CustomerView>({ method: 'GET', path: `/api/v1/customers/${customerId}` }).then((sent) => {
      if (!isNewest || !sent.ok) return;
      const { sites, contacts } = sent.value;
      setPlaces({
        sites: sites.filter(({ archived }) => archived === 'no'),
        contacts: contacts.filter(({ archived }) => archived === 'no'),
      });
    });
    return () => {
      isNewest = false;
    };
  }, [customerId]);
  return places;
}
