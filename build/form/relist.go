package form

import "bytes"

// list changes the items of the list that begins there, and keeps its comments and
// lines. Items that are the same at its two ends stay untouched, so that a comment
// stays with its item.
func (r *rewriter) list(from int, was, want []string) {
	items := itemsOf(r.src, from)
	if len(items) != len(was) {
		return // the text is then found not to be as wanted
	}
	head := 0
	for head < min(len(was), len(want)) && was[head] == want[head] {
		head++
	}
	tail := 0
	for tail < min(len(was), len(want))-head && was[len(was)-1-tail] == want[len(want)-1-tail] {
		tail++
	}
	old, fresh := len(was)-tail, want[head:len(want)-tail]
	for i := old - 1; i >= head; i-- { // from behind, so that places stay right
		if i-head < len(fresh) {
			continue
		}
		r.drop(from, i)
	}
	kept := min(old-head, len(fresh))
	for k := len(fresh) - 1; k >= kept; k-- {
		r.insert(from, head+kept-1, fresh[k])
	}
	for k := kept - 1; k >= 0; k-- {
		r.splice(items[head+k].from, items[head+k].to, fresh[k])
	}
}

// A stretch is the bytes from one to before another.
type stretch struct{ from, to int }

func itemsOf(src []byte, from int) (items []stretch) {
	w := &walker{src: src, at: from + 1, keys: map[string]Place{}, values: map[string]Place{}, tables: map[string]int{}}
	for w.more(']') {
		begin := w.at
		end := valueEnd(src, begin)
		w.value("x")
		items = append(items, stretch{begin, end})
	}
	return items
}

// comma returns the place of the comma behind an item, −1 where there is none.
func comma(src []byte, at int) int {
	w := &walker{src: src, at: at}
	if w.skip(" \t\r\n"); w.at < len(src) && src[w.at] == ',' {
		return w.at
	}
	return -1
}

// drop takes an item and its comma away, and a line that holds nothing else.
func (r *rewriter) drop(list, i int) {
	items := itemsOf(r.src, list)
	from, to := items[i].from, items[i].to
	behind := comma(r.src, to)
	switch {
	case behind >= 0 && len(bytes.TrimSpace(r.src[to:behind])) == 0:
		to = behind + 1
	case behind >= 0: // a comment is between
		r.splice(behind, behind+1, "")
	case i > 0 && !bytes.ContainsAny(r.src[items[i-1].to:from], "#\n"):
		from = items[i-1].to
	}
	if i < len(items)-1 {
		for r.src[to] == ' ' || r.src[to] == '\t' {
			to++
		}
	}
	r.splice(from, to, "")
	begin := bytes.LastIndexByte(r.src[:from], '\n') + 1
	if n := bytes.IndexByte(r.src[from:], '\n'); begin > list && n >= 0 && len(bytes.TrimSpace(r.src[begin:from+n])) == 0 {
		r.splice(begin, from+n+1, "")
	}
}

// insert writes an item behind another, on a line of its own where that one has one;
// behind the bracket where the other is before the first.
func (r *rewriter) insert(list, after int, text string) {
	items := itemsOf(r.src, list)
	switch {
	case after < 0 && len(items) == 0:
		r.splice(list+1, list+1, text)
		return
	case after < 0:
		r.splice(items[0].from, items[0].from, text+", ")
		return
	}
	at := items[after].to
	begin := bytes.LastIndexByte(r.src[:at], '\n') + 1
	n := bytes.IndexByte(r.src[at:], '\n')
	indent := r.src[begin:items[after].from]
	shared := after < len(items)-1 && items[after+1].from < at+n || valueEnd(r.src, list) <= at+n
	if begin <= list || n < 0 || len(bytes.TrimSpace(indent)) > 0 || shared {
		r.splice(at, at, ", "+text)
		return
	}
	end := at + n
	if r.src[end-1] == '\r' {
		end--
	}
	behind := comma(r.src, at)
	switch {
	case behind < 0: // the last one
		r.splice(end, end, r.eol+string(indent)+text)
		r.splice(at, at, ",")
	case behind > end: // its comma is on a line below
		r.splice(at, at, ", "+text)
	default:
		r.splice(end, end, r.eol+string(indent)+text+",")
	}
}
