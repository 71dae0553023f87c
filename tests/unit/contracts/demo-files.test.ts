import { describe, expect, it } from 'vitest';
import { parseCustomers } from '#lib/contracts/customer.ts';
import { parseEnquiryFile } from '#lib/contracts/enquiry-file.ts';

function sentenceOf(result: ReturnType<typeof parseCustomers> | ReturnType<typeof parseEnquiryFile>): string {
  return result.ok ? 'no error' : result.reason.sentence;
}

describe('customers and enquiries in files', () => {
  it('names the place of a wrong field of a customer', () => {
    expect(
      sentenceOf(
        parseCustomers([
          {
            code: 'C-1',
            name: 'A',
            address: ['x'],
            contact: 'y',
            email: 'z',
            delivery_band: 'near',
            account: 'gold',
            since: '2030',
          },
        ]),
      ),
    ).toMatch(/^Customers, 0\.account: /);
  });

  it('names the field that an enquiry lacks', () => {
    expect(sentenceOf(parseEnquiryFile({ id: 'a', title: 'b', customer: 'C-1', site: {} }))).toMatch(
      /^Enquiry, list: /,
    );
  });
});
