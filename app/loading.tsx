import { Waiting } from './_ui/waiting.tsx';

export default function Loading() {
  return <Waiting what="The screen is being drawn." />;
}
