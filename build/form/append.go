package form

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/compute/place"
)

// Append appends the values in bytes, which two sets of values have in common only if they
// are equal: they are a key for what is evaluated once. They are for no reader; of a day by
// name they have the name.
func (v Values) Append(dst []byte) []byte {
	var room [64]string
	names := room[:0]
	for name, x := range v {
		if x != nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	dst = appendCount(dst, len(names))
	for _, name := range names {
		dst = appendHeld(appendText(dst, name), v[name])
	}
	return dst
}

// appendHeld appends one value after a letter for its type, so that none reads like one of
// another type. A new type of held has its case here.
func appendHeld(dst []byte, x any) []byte {
	switch x := x.(type) {
	case string:
		return appendText(append(dst, 's'), x)
	case float64:
		return binary.BigEndian.AppendUint64(append(dst, 'f'), math.Float64bits(x))
	case int:
		return appendCount(append(dst, 'i'), x)
	case bool:
		if x {
			return append(dst, 'y')
		}
		return append(dst, 'n')
	case place.Date:
		return appendDate(append(dst, 'd'), x)
	case YearMonth:
		return appendDate(append(dst, 'm'), x.First)
	case time.Duration:
		return binary.AppendVarint(append(dst, 'c'), int64(x))
	case TimeSpan:
		return appendSpan(append(dst, 't'), x)
	case *time.Location:
		return appendText(append(dst, 'z'), x.String())
	case []string:
		return appendEach(append(dst, 'S'), x, appendText)
	case []place.Date:
		return appendEach(append(dst, 'D'), x, appendDate)
	case []TimeSpan:
		return appendEach(append(dst, 'T'), x, appendSpan)
	case []Values:
		return appendRows(append(dst, 'V'), x)
	case Records:
		dst = appendEach(appendText(append(dst, 'R'), x.File), x.Line, appendCount)
		return appendRows(dst, x.Rows)
	case Day:
		return appendText(append(dst, 'N'), x.Text)
	case monthOf:
		return appendText(append(dst, 'M'), x.Text)
	case dayList:
		return appendEach(append(dst, 'L'), x, appendHeld)
	}
	panic(fmt.Sprintf("form: a value holds %T", x))
}

func appendText(dst []byte, s string) []byte { return append(appendCount(dst, len(s)), s...) }

func appendCount(dst []byte, n int) []byte { return binary.AppendVarint(dst, int64(n)) }

func appendDate(dst []byte, d place.Date) []byte {
	return appendCount(appendCount(appendCount(dst, d.Year), int(d.Month)), d.Day)
}

func appendSpan(dst []byte, s TimeSpan) []byte {
	return binary.AppendVarint(binary.AppendVarint(dst, int64(s.From)), int64(s.To))
}

func appendRows(dst []byte, rows []Values) []byte {
	return appendEach(dst, rows, func(dst []byte, row Values) []byte { return row.Append(dst) })
}

func appendEach[T any](dst []byte, list []T, one func([]byte, T) []byte) []byte {
	dst = appendCount(dst, len(list))
	for _, x := range list {
		dst = one(dst, x)
	}
	return dst
}
