package encode_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/encode"
)

// The rules of RFC 5545: lines end in CRLF and have at most 75 octets, none is
// cut within a character, and what was folded and escaped reads back.
func TestICS(t *testing.T) {
	long := "Planète Ω, eine „lange“ Zeile; with a \\ and\na second line " + strings.Repeat("☆é", 60)
	at := time.Date(2027, 4, 13, 12, 10, 0, 0, time.UTC)
	out := string(encode.ICS("Unit", at, []encode.Event{{UID: "a@b", From: at, To: at.Add(time.Hour), Summary: long, Description: "x\x00y", Tentative: true}}))
	if !strings.HasSuffix(out, "END:VCALENDAR\r\n") || strings.Count(out, "\n") != strings.Count(out, "\r\n") {
		t.Error("line ends are not CRLF")
	}
	for _, line := range strings.Split(out, "\r\n") {
		if len(line) > 75 {
			t.Errorf("%d octets: %s", len(line), line)
		}
		if strings.ToValidUTF8(line, "?") != line {
			t.Errorf("cut within a character: %q", line)
		}
	}
	whole := strings.ReplaceAll(out, "\r\n ", "")
	_, rest, _ := strings.Cut(whole, "SUMMARY:")
	summary, _, _ := strings.Cut(rest, "\r\n")
	if got := strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n").Replace(summary); got != long {
		t.Errorf("reads back as %q", got)
	}
	for _, want := range []string{"DTSTART:20270413T121000Z\r\n", "DTEND:20270413T131000Z\r\n", "STATUS:TENTATIVE\r\n", "DESCRIPTION:xy\r\n"} {
		if !strings.Contains(whole, want) {
			t.Errorf("lacks %q", want)
		}
	}
}
