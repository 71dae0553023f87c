import { Waiting } from '#app/_ui/waiting.tsx';

export default function Loading() {
  return <Waiting what="The enquiry is being fetched." />;
}
