'use client';

import { useState } from 'react';
import type { ContactView } from '#lib/services/customers/open-customer.ts';
import { PutAway } from '../../put-away.client.tsx';
import { ContactForm } from './contact-form.client.tsx';

interface ContactListProps {
  readonly customerId: number;
  readonly contacts: readonly ContactView[];
  readonly sites: readonly { readonly id: number; readonly name: string }[];
}

export function ContactList({ customerId, contacts, sites }: ContactListProps) {
  const [open, setOpen] = useState<number | 'new' | null>(null);
  const edited = contacts.find(({ id }) => id === open);
  const close = () => setOpen(null);
  return (
    <>
      {open === null ? (
        <p className="tools">
          <button type="button" className="main" onClick={() => setOpen('new')}>
            New contact
          </button>
        </p>
      ) : (
        <ContactForm
          key={open}
          {...{ customerId, sites, close }}
          {...(edited === undefined ? {} : { contact: edited })}
        />
      )}
      {contacts.length === 0 ? (
        <div className="empty">
          <h2>Nobody is named yet</h2>
          <p>A contact can be named on an enquiry, and is found by name, mail and telephone from every screen.</p>
        </div>
      ) : (
        <div className="wide">
          <table>
            <thead>
              <tr>
                <th>Name</th>
                <th className="wide-only">Site</th>
                <th>Reached by</th>
                <th className="wide-only">Note</th>
                <th>
                  <span className="unseen">Change</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {contacts.map((contact) => (
                <ContactRow key={contact.id} contact={contact} sites={sites} edit={() => setOpen(contact.id)} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

interface ContactRowProps {
  readonly contact: ContactView;
  readonly sites: ContactListProps['sites'];
  readonly edit: () => void;
}

function ContactRow({ contact, sites, edit }: ContactRowProps) {
  return (
    <tr>
      <td>
        {contact.name}
        {contact.archived === 'yes' && <small> put away</small>}
        <small className="beside">{contact.position}</small>
      </td>
      <td className="wide-only">{sites.find(({ id }) => id === contact.siteId)?.name}</td>
      <td>
        {contact.telephone !== '' && <a href={`tel:${contact.telephone.replaceAll(' ', '')}`}>{contact.telephone}</a>}{' '}
        {contact.email !== '' && <a href={`mailto:${contact.email}`}>{contact.email}</a>}
      </td>
      <td className="wide-only">{contact.note}</td>
      <td>
        <span className="tools" style={{ margin: 0 }}>
          <button type="button" onClick={edit}>
            Edit<span className="unseen"> {contact.name}</span>
          </button>
          <PutAway kind="contact" id={contact.id} archived={contact.archived} name={contact.name} />
        </span>
      </td>
    </tr>
  );
}
