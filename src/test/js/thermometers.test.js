import { environment, measurement, wedge } from "/js/tablet/thermometers.js";
import { equal } from "/test/assert.js";

const view = hex => new DataView(Uint8Array.from(hex.split(" "), byte => parseInt(byte, 16)).buffer);
const said = reading => reading === null ? "none" : reading.value + " " + reading.unit;

/** The forms and special values: Bluetooth SIG, GATT Specification Supplement, 0x2A1C and 0x2A6E; IEEE 11073-20601 FLOAT (from memory, as practice has them). */
export async function health_thermometers_are_read_by_their_bytes() {
  equal(said(measurement(view("00 F1 02 00 FF"))), "75.3 C");
  equal(said(measurement(view("00 47 FF FF FF"))), "-18.5 C");
  equal(said(measurement(view("01 2A 03 00 FF"))), "81.0 F");
  equal(said(measurement(view("02 F1 02 00 FF E4 07 0A 1C 06 00 00"))), "75.3 C", "a timestamp follows");
  equal(said(measurement(view("00 6C 01 00 FF"))), "36.4 C");
  equal(said(measurement(view("00 4B 00 00 00"))), "75 C");
  equal(said(measurement(view("00 07 00 00 01"))), "70 C");
}

export async function what_is_no_temperature_is_none() {
  for (const special of ["FF FF 7F", "00 00 80", "FE FF 7F", "02 00 80", "01 00 80"]) equal(said(measurement(view("00 " + special + " 00"))), "none", special);
  equal(said(measurement(view("00 F1 02"))), "none");
  equal(said(environment(view("00 80"))), "none");
  equal(said(environment(view("01"))), "none");
}

export async function environmental_sensors_are_read_in_hundredths() {
  equal(said(environment(view("A9 01"))), "4.25 C");
  equal(said(environment(view("C6 F8"))), "-18.50 C");
  equal(said(environment(view("00 00"))), "0.00 C");
  equal(said(environment(view("FB FF"))), "-0.05 C");
  equal(said(environment(view("FF 7F"))), "327.67 C");
}

export async function a_probe_that_types_is_told_from_fingers() {
  const form = document.createElement("form"), field = document.createElement("input");
  form.append(field);
  wedge(form, field);
  const type = (keys, gap) => keys.forEach((key, i) => { const event = new KeyboardEvent("keydown", { key }); Object.defineProperty(event, "timeStamp", { value: 5000 + i * gap }); field.dispatchEvent(event); });
  type(["7", "5", ".", "3", "Enter"], 10);
  equal(form.dataset.source, "wedge");
  type(["7", "5", ".", "3", "Enter"], 300);
  equal(form.dataset.source, "typed");
}
