import { say } from "/words.js";

/**
 * Thermometers that speak one of the two open services of Bluetooth: Health Thermometer (0x1809, Temperature Measurement 0x2A1C) and Environmental
 * Sensing (0x181A, Temperature 0x2A6E), as the Bluetooth SIG's GATT specification supplement gives their bytes. Nothing else is guessed at.
 */
const HEALTH = 0x1809, MEASUREMENT = 0x2A1C, ENVIRONMENT = 0x181A, TEMPERATURE = 0x2A6E;

/** A whole number with so many decimals, as text. */
function decimals(number, places) {
  const digits = Math.abs(number).toString().padStart(places + 1, "0"), sign = number < 0 ? "-" : "";
  return places === 0 ? sign + digits : sign + digits.slice(0, -places) + "." + digits.slice(-places);
}

/** An IEEE 11073 32-bit float: a signed mantissa of 24 bits, then a signed exponent of 10; null for not a number, not at this resolution, and infinities. */
export function float32(view, at) {
  const mantissa = (view.getUint8(at) | view.getUint8(at + 1) << 8 | view.getInt8(at + 2) << 16), exponent = view.getInt8(at + 3);
  if ([0x7FFFFF, -0x800000, 0x7FFFFE, -0x7FFFFE, -0x7FFFFF].includes(mantissa) || Math.abs(exponent) > 6) return null;
  return exponent <= 0 ? decimals(mantissa, -exponent) : decimals(mantissa * 10 ** exponent, 0);
}

/** Temperature Measurement: flags (bit 0: °F), then the float. Null when the bytes hold no temperature. */
export function measurement(view) {
  if (view.byteLength < 5) return null;
  const value = float32(view, 1);
  return value === null ? null : { value, unit: view.getUint8(0) & 1 ? "F" : "C" };
}

/** Temperature of Environmental Sensing: a signed 16-bit number of 0.01 °C; 0x8000 is not known. Null then, and below absolute zero. */
export function environment(view) {
  if (view.byteLength < 2) return null;
  const hundredths = view.getInt16(0, true);
  return hundredths === -0x8000 || hundredths < -27315 ? null : { value: decimals(hundredths, 2), unit: "C" };
}

/** Lets the person choose a thermometer, and calls back with each reading; resolves with its name. */
export async function listen(onReading, onLost) {
  const device = await navigator.bluetooth.requestDevice({ filters: [{ services: [HEALTH] }, { services: [ENVIRONMENT] }], optionalServices: [HEALTH, ENVIRONMENT] });
  device.addEventListener("gattserverdisconnected", onLost);
  const server = await device.gatt.connect();
  const [service, characteristic, read] = await server.getPrimaryService(HEALTH).then(found => [found, MEASUREMENT, measurement])
    .catch(async () => [await server.getPrimaryService(ENVIRONMENT), TEMPERATURE, environment]);
  const source = await service.getCharacteristic(characteristic);
  const told = view => { const reading = read(view); if (reading) onReading(reading); };
  source.addEventListener("characteristicvaluechanged", event => told(event.target.value));
  if (source.properties.notify || source.properties.indicate) await source.startNotifications();
  if (source.properties.read) told(await source.readValue());
  return device.name ?? "";
}

/** Puts a key to choose a thermometer on the pad of a form, where the browser has Bluetooth. */
export function offer(form, field, unit) {
  if (!navigator.bluetooth || !form.querySelector("[data-instrument]")) return;
  const key = Object.assign(document.createElement("button"), { type: "button", textContent: say("bluetooth") });
  const place = Object.assign(document.createElement("p"), { className: "note", hidden: true });
  key.addEventListener("click", async () => {
    place.hidden = false;
    place.textContent = say("bluetooth_waits");
    const name = await listen(({ value, unit: scale }) => {
      field.value = value;
      unit.value = scale;
      form.dataset.source = "bluetooth";
      field.dispatchEvent(new Event("input", { bubbles: true }));
      form.dataset.source = "bluetooth";
    }, () => { place.textContent = say("bluetooth_lost"); }).catch(() => null);
    place.textContent = name === null ? say("bluetooth_none") : say("bluetooth_with", name);
  });
  field.closest(".pair")?.after(key, place);
}

/** Tells a probe that types like a keyboard, digits in quick succession and then Enter, from a person's fingers. */
export function wedge(form, field) {
  const QUICK_MS = 60;
  let last = 0, quick = 0;
  field.addEventListener("keydown", event => {
    const gap = event.timeStamp - last;
    last = event.timeStamp;
    quick = /^[\d.,+-]$/.test(event.key) ? (gap < QUICK_MS ? quick + 1 : 0) : quick;
    if (event.key === "Enter") form.dataset.source = quick >= 2 ? "wedge" : "typed";
  });
  field.addEventListener("input", event => { if (event.isTrusted) form.dataset.source = "typed"; });
}
