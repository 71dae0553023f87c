import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { momentText } from '#app/_ui/plan-words.ts';
import { listEnquiries } from '#lib/services/list-enquiries.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Enquiries' };

export default async function EnquiriesPage() {
  const enquiries = listEnquiries(await asking());
  if (!enquiries.ok) return <p className="notice refusal">{enquiries.reason.sentence}</p>;
  return (
    <>
      <div className="heading">
        <h1>Enquiries</h1>
        <Link className="button main" href="/enquiries/new">
          New enquiry
        </Link>
      </div>
      {enquiries.value.length === 0 ? (
        <p className="empty">No enquiry yet. Open one, then take in the customer’s valve list.</p>
      ) : (
        <div className="wide">
          <table>
            <thead>
              <tr>
                <th>Number</th>
                <th>Title</th>
                <th className="wide-only">Customer</th>
                <th>State</th>
                <th className="number">Lines</th>
                <th className="wide-only">Changed</th>
              </tr>
            </thead>
            <tbody>
              {enquiries.value.map((enquiry) => (
                <tr key={enquiry.id}>
                  <td className="tag">
                    <Link href={`/enquiries/${enquiry.id}`}>{enquiry.number}</Link>
                  </td>
                  <td>
                    {enquiry.title}
                    <small className="narrow-only">{enquiry.customer}</small>
                  </td>
                  <td className="wide-only">{enquiry.customer}</td>
                  <td>{enquiry.state}</td>
                  <td className="number">{enquiry.lines}</td>
                  <td className="wide-only">{momentText(enquiry.updated_at)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}
