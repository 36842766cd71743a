export const NotYourInstruments = () => (
  <p className="form-message">
    Instruments are kept by a technician, or by whoever keeps the shop. Here they can be read.
  </p>
)
