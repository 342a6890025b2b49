package packpot.search;

/** What a search has done so far, in entries of dictionaries: the same on every machine, as seconds are not. */
final class Work {
    private long entries;

    void add(long more) {
        entries += more;
    }

    long entries() {
        return entries;
    }
}
