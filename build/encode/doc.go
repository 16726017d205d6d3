// Package encode writes results for other programs: as CSV, as JSON, as a
// calendar file and, for a terminal, as plain text.
//
//	err := encode.JSON(os.Stdout, encode.Answer{Placeholder: "sun-day", Result: r}, words)
//	calendar := encode.ICS("Our unit", stamp, events)
//
// CSV and JSON carry numbers in metric units, moments in ISO 8601 and dates as dates:
// at full precision on the terminal, in files for download as far as they are promised
// (say.Value.Kept); only titles and texts are in the language of the words.
// The names of the fields are the same in every language.
package encode
