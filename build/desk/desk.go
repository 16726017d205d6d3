package desk

import (
	"bytes"
	"crypto/rand"
	"encoding/json"
	"fmt"
	"html"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
	"time"

	_ "embed"

	"noonbook/build/file"
)

// A Pressing is what came of the lessons as they were saved.
type Pressing struct {
	Files    []file.File // nil where problems left none
	Problems []string    // each with its place, and the line below it
	Form     string      // what a page's link to the page to type on says; "" for no link
}

// A Desk holds the last handbook that was whole and the last problems.
type Desk struct {
	token string
	pages http.Handler // to type on; nil for none
	mu    sync.Mutex
	files map[string][]byte // by name
	form  string
	state state
	next  chan struct{} // closed when the state changes
}

// A state is what pages are told. Serial counts pressings, Whole is the serial of
// the last one that succeeded.
type state struct {
	Serial   int      `json:"serial"`
	Whole    int      `json:"whole"`
	Problems []string `json:"problems"`
}

// New returns a desk with nothing on it, at a path that nobody can guess.
func New() *Desk { return &Desk{token: rand.Text(), next: make(chan struct{})} }

// Path is where the handbook lies, /TOKEN/ with at least 128 random bits.
func (d *Desk) Path() string { return "/" + d.token + "/" }

// Put lays a pressing on the desk. One without files leaves the handbook that was
// there and shows its problems.
func (d *Desk) Put(p Pressing) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.state.Serial++
	d.state.Problems = append([]string{}, p.Problems...)
	d.form = p.Form
	if p.Files != nil {
		d.files, d.state.Whole = map[string][]byte{}, d.state.Serial
		for _, f := range p.Files {
			d.files[f.Name] = f.Bytes
		}
	}
	close(d.next)
	d.next = make(chan struct{})
}

// Offer lays pages on the desk that a person types on, at desk/ below its path. They
// are asked for /desk/NAME, and only where the desk would answer itself; what they are
// sent comes from pages of the desk. Start is the one that others lead to.
func (d *Desk) Offer(pages http.Handler) { d.pages = pages }

// Start is the page to type on that the pages of the handbook lead to.
const Start = "desk/school"

// Whole reports whether a handbook is on the desk.
func (d *Desk) Whole() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.state.Whole > 0
}

//go:embed follow.js
var follow []byte

// patience is how long a page that asks is kept waiting for a change. It is
// shorter than the minute after which some programs between give up.
const patience = 25 * time.Second

// Handler answers with the files of the handbook, below the desk's path alone.
// Everything outside it is not found (RFC 9110, 15.5.5), and whoever is not to be
// answered is forbidden (15.5.4).
func (d *Desk) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /desk/follow.js", func(w http.ResponseWriter, _ *http.Request) { send(w, "follow.js", follow) })
	mux.HandleFunc("GET /desk/state.js", d.tell)
	mux.HandleFunc("GET /desk/{page...}", d.typing)
	mux.HandleFunc("POST /desk/{page...}", d.typing)
	mux.HandleFunc("GET /{name...}", d.file)
	own := http.StripPrefix("/"+d.token, mux)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		shut(w.Header())
		if why := refusal(r); why != "" {
			http.Error(w, why, http.StatusForbidden)
			return
		}
		if !d.below(r.URL.Path) {
			http.Error(w, "nothing is here; the address of this desk is the whole line that it printed", http.StatusNotFound)
			return
		}
		own.ServeHTTP(w, r)
	})
}

// typing hands a request to the pages to type on. One that wants to write must come
// from a page of the desk and say so.
func (d *Desk) typing(w http.ResponseWriter, r *http.Request) {
	if d.pages == nil {
		http.Error(w, "this desk has no pages to type on", http.StatusNotFound)
		return
	}
	typedOn(w.Header())
	if r.Method == http.MethodPost && !fromOwnPage(r) {
		http.Error(w, "only a page of this desk can be sent to it", http.StatusForbidden)
		return
	}
	d.pages.ServeHTTP(w, r)
}

// tell answers with the state when it is another than the page has seen, or
// after some time with the same.
func (d *Desk) tell(w http.ResponseWriter, r *http.Request) {
	seen, err := strconv.Atoi(r.URL.Query().Get("seen"))
	if err != nil {
		http.Error(w, "seen: a number is wanted", http.StatusBadRequest)
		return
	}
	d.mu.Lock()
	now, next := d.state, d.next
	d.mu.Unlock()
	if now.Serial == seen {
		select {
		case <-next:
		case <-time.After(patience):
		case <-r.Context().Done():
			return
		}
		d.mu.Lock()
		now = d.state
		d.mu.Unlock()
	}
	text, err := json.Marshal(now)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	send(w, "state.js", fmt.Appendf(nil, "noonbookDesk(%s);", text))
}

func (d *Desk) file(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if name == "" {
		name = "index.html"
	}
	d.mu.Lock()
	text, ok := d.files[name]
	state, form := d.state, d.form
	d.mu.Unlock()
	switch {
	case state.Whole == 0:
		w.WriteHeader(http.StatusServiceUnavailable)
		send(w, "none.html", d.following(empty(state.Problems), state, form))
	case !ok:
		http.Error(w, "the handbook has no "+html.EscapeString(name), http.StatusNotFound)
	case path.Ext(name) == ".html":
		send(w, name, d.following(text, state, form))
	default:
		send(w, name, text)
	}
}

// following adds the script that follows the desk to a page.
func (d *Desk) following(page []byte, s state, form string) []byte {
	script := fmt.Sprintf(`<script src="%sdesk/follow.js" data-whole="%d" defer></script>`, d.Path(), s.Whole)
	if d.pages != nil && form != "" {
		script = fmt.Sprintf(`<script src="%sdesk/follow.js" data-whole="%d" data-form="%s" data-start="%s" defer></script>`, d.Path(), s.Whole, html.EscapeString(form), d.Path()+Start)
	}
	if i := bytes.LastIndex(page, []byte("</body>")); i >= 0 {
		return append(append(bytes.Clone(page[:i]), script...), page[i:]...)
	}
	return append(bytes.Clone(page), script...)
}

// empty is the page while no pressing has succeeded yet.
func empty(problems []string) []byte {
	var b bytes.Buffer
	b.WriteString("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>noonbook desk</title></head><body><h1>No handbook yet</h1><p>Mend this and save; the handbook then comes by itself.</p>")
	for _, p := range problems {
		b.WriteString("<pre>" + html.EscapeString(p) + "</pre>")
	}
	b.WriteString("</body></html>")
	return b.Bytes()
}

func send(w http.ResponseWriter, name string, text []byte) {
	kind := file.MediaType(name)
	w.Header().Set("Content-Security-Policy", policyFor(kind))
	if strings.HasPrefix(kind, "text/") {
		kind += "; charset=utf-8"
	}
	w.Header().Set("Content-Type", kind)
	w.Write(text) // a reader who left is no fault of ours
}
