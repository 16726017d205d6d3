package desk

import (
	"crypto/subtle"
	"net"
	"net/http"
	"strings"
)

// refusal says why a request is not answered, or "" where it is. Any web page that
// is open beside the desk can send requests to this machine; what it cannot do is
// lie about where they come from.
func refusal(r *http.Request) string {
	switch {
	case !fromHere(r.RemoteAddr) || !namesUs(r.Host):
		return "this desk is for its own machine"
	case !ownRequest(r.Header) || !ownOrigin(r.Header, r.Host):
		return "this desk does not answer other web pages; type its address into the address line"
	}
	return ""
}

// fromHere reports whether an address is one of this machine's loopback.
func fromHere(address string) bool {
	host, _, err := net.SplitHostPort(address)
	ip := net.ParseIP(host)
	return err == nil && ip != nil && ip.IsLoopback()
}

// namesUs reports whether a request asks for this machine by its own name, and not
// by one that somebody else made lead here.
func namesUs(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	ip := net.ParseIP(strings.Trim(host, "[]"))
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// ownRequest reports whether a request was made by a page of the desk, or by a
// person who typed the address: then it opens a page and fetches nothing for
// another. W3C, Fetch Metadata Request Headers, Sec-Fetch-Site and Sec-Fetch-Mode.
// Another port of this machine is the same site, and another's page all the same.
// A browser that does not send them has the path to guess.
func ownRequest(h http.Header) bool {
	for _, site := range h.Values("Sec-Fetch-Site") {
		mode := h.Get("Sec-Fetch-Mode")
		if site != "same-origin" && (site != "none" || mode != "" && mode != "navigate") {
			return false
		}
	}
	return true
}

// ownOrigin reports whether a request that names its origin (Fetch Standard, the
// Origin header) names the desk.
func ownOrigin(h http.Header, host string) bool {
	for _, origin := range h.Values("Origin") {
		if origin != "http://"+host {
			return false
		}
	}
	return true
}

// fromOwnPage reports whether a request says that a page of the desk made it. Browsers
// that send no Sec-Fetch-Site send an origin with what is posted, or the page's address;
// a request without any of them was made by something else. What the headers say
// against it, refusal has found.
func fromOwnPage(r *http.Request) bool {
	own := "http://" + r.Host
	referrer := r.Header.Get("Referer")
	if referrer != "" && !strings.HasPrefix(referrer, own+"/") {
		return false
	}
	return r.Header.Get("Sec-Fetch-Site") == "same-origin" || r.Header.Get("Origin") == own || referrer != ""
}

// below reports whether a path lies below the desk's own, in a time that does not
// tell how much of a guess was right.
func (d *Desk) below(path string) bool {
	token, _, ok := strings.Cut(strings.TrimPrefix(path, "/"), "/")
	return ok && subtle.ConstantTimeCompare([]byte(token), []byte(d.token)) == 1
}

// What an answer may do, by its kind. Content Security Policy Level 3: a page is
// held to every policy that it is sent, and its own stands in its head, where
// frame-ancestors is not heeded.
const (
	pagePolicy    = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
	typedPolicy   = "default-src 'none'; script-src 'self'; style-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
	drawingPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'"
	plainPolicy   = "frame-ancestors 'none'" // a viewer of the browser's own may load what it shows
)

func policyFor(kind string) string {
	family, _, _ := strings.Cut(kind, "/")
	switch {
	case kind == "image/svg+xml":
		return drawingPolicy
	case kind == "application/pdf", family == "image", family == "audio", family == "video":
		return plainPolicy
	}
	return pagePolicy
}

// shut keeps an answer to the page that asked for it, in programs that heed it:
// nobody else embeds it (Fetch Standard, Cross-Origin-Resource-Policy; HTML
// Standard, X-Frame-Options), takes it for another kind (Fetch Standard,
// X-Content-Type-Options), stores it (RFC 9111, 5.2.2.5) or learns its address by
// a link (W3C, Referrer Policy).
func shut(h http.Header) {
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Content-Security-Policy", pagePolicy)
	h.Set("X-Frame-Options", "DENY")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cache-Control", "no-store")
	h.Set("Referrer-Policy", "no-referrer")
}

// typedOn lets a page be sent back to where it came from, and nowhere else. A page that
// tells nobody its address would send the origin "null" with it (Fetch Standard, append
// a request Origin header), so it tells the desk alone (W3C, Referrer Policy).
func typedOn(h http.Header) {
	h.Set("Content-Security-Policy", typedPolicy)
	h.Set("Referrer-Policy", "same-origin")
}
