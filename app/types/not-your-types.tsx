export const NotYourTypes = () => (
  <p className="caution">Types are written down by a technician, or by whoever keeps the shop. Ask one to sign in.</p>
)
