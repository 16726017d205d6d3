package compass

import (
	"bufio"
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

const (
	degree     = 12     // of the model, in space and in its change with time
	modelEpoch = 2025.0 // decimal year to which g and h belong
	modelEnd   = 2030.0 // decimal year at which the model expires
)

//go:embed wmm2025.txt
var wmm2025Text string

// wmm2025 returns the coefficients, read once from the embedded table.
var wmm2025 = sync.OnceValues(func() (*gaussModel, error) { return parseModel(wmm2025Text) })

// A gaussModel holds the Gauss coefficients by degree and order.
type gaussModel [degree + 1][degree + 1]gaussTerm

// A gaussTerm holds one pair of coefficients at the epoch, in nT, and their
// change, in nT a year.
type gaussTerm struct{ g, h, dg, dh float64 }

// parseModel reads lines "n m g h dg dh"; lines that begin with # are comments.
// The terms must come in order of degree and then order, none left out.
func parseModel(text string) (*gaussModel, error) {
	var model gaussModel
	n, m := 1, 0
	lines := bufio.NewScanner(strings.NewReader(text))
	for lines.Scan() {
		line := lines.Text()
		if strings.HasPrefix(line, "#") {
			continue
		}
		var atN, atM int
		var term gaussTerm
		if _, err := fmt.Sscan(line, &atN, &atM, &term.g, &term.h, &term.dg, &term.dh); err != nil {
			return nil, fmt.Errorf("magnetic coefficients: line %q: %w", line, err)
		}
		if atN != n || atM != m || n > degree {
			return nil, fmt.Errorf("magnetic coefficients: line %q: want degree %d order %d", line, n, m)
		}
		model[n][m] = term
		if m++; m > n {
			n, m = n+1, 0
		}
	}
	if n != degree+1 {
		return nil, fmt.Errorf("magnetic coefficients end before degree %d order %d", n, m)
	}
	return &model, lines.Err()
}
