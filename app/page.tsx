export default function HomePage() {
  return (
    <main>
      <h1>Kitwright</h1>
    </main>
  );
}
