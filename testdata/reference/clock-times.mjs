// Writes clock-times.csv: times, stretches of time and dates as the locale data of CLDR
// writes them, through the Intl of Node, with every space as a plain one.
//
//   node clock-times.mjs > clock-times.csv
const format = (locale, options) => new Intl.DateTimeFormat(locale, { timeZone: "UTC", ...options });
const plain = (text) => text.replace(/[\s\u2009]/gu, " ");
const at = (time) => new Date(`2027-04-13T${time}:00Z`);
const row = (...cells) => console.log(cells.map((cell) => `"${cell}"`).join(","));
const two = (n) => String(n).padStart(2, "0");

console.log("kind,locale,from,to,text");
const clock = format("en-CA", { hour: "numeric", minute: "2-digit", hour12: true });
for (let hour = 0; hour < 24; hour++)
  for (const minute of [0, 5, 20, 59]) row("time", "en-CA", `${two(hour)}:${two(minute)}`, "", plain(clock.format(at(`${two(hour)}:${two(minute)}`))));
for (const [from, to] of [["09:10", "10:00"], ["11:30", "12:20"], ["13:15", "14:05"], ["12:20", "13:10"], ["00:05", "01:00"], ["11:59", "12:01"], ["00:01", "23:59"]])
  row("range", "en-CA", from, to, plain(clock.formatRange(at(from), at(to))));
const named = format("en-CA", { hour: "numeric", dayPeriod: "long", hour12: true });
row("period", "en-CA", "12:00", "", plain(named.format(at("12:00"))));
for (const locale of ["en-CA", "en-GB", "fr-CA"])
  for (const day of ["2027-04-13", "2027-05-01"]) {
    const date = new Date(`${day}T00:00Z`);
    row("weekday", locale, day, "", plain(format(locale, { weekday: "long", month: "long", day: "numeric" }).format(date)));
    row("day", locale, day, "", plain(format(locale, { month: "long", day: "numeric" }).format(date)));
    row("date", locale, day, "", plain(format(locale, { year: "numeric", month: "long", day: "numeric" }).format(date)));
  }
