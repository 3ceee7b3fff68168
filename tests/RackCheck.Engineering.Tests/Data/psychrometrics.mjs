// Values of psychrolib 1.1.1 (npm, MIT), SI units: t in C, rh in percent, h in m, p and psat in Pa, density in kg/m3, dewPoint in C (null for dry air).
// npm i psychrolib@1.1.1 && node psychrometrics.mjs > psychrometrics.csv
import psychrolib from 'psychrolib';

const p = psychrolib;
const round = x => Number(x.toPrecision(10));
p.SetUnitSystem(p.SI);
console.log('t,rh,h,p,psat,density,dewPoint');
for (const h of [-400, 0, 1000, 2000, 3000, 5000]) {
  for (const t of [1, 10, 20, 25, 30, 35, 40, 50]) {
    for (const rh of [0, 10, 30, 60, 100]) {
      const pressure = p.GetStandardAtmPressure(h);
      const ratio = p.GetHumRatioFromRelHum(t, rh / 100, pressure);
      const dew = rh === 0 ? '' : round(p.GetTDewPointFromRelHum(t, rh / 100));
      console.log([t, rh, h, round(pressure), round(p.GetSatVapPres(t)), round(p.GetMoistAirDensity(t, ratio, pressure)), dew].join(','));
    }
  }
}
