package rootcast.app.climate.store;

/** Text from outside as a column can hold it. */
final class StoredText {

    private StoredText() {}

    /** Cut short at {@code most} characters, and without zero bytes, which PostgreSQL does not keep. */
    static String of(String text, int most) {
        String kept = text.replace('\0', '\uFFFD');
        if (kept.length() <= most) {
            return kept;
        }
        int end = Character.isHighSurrogate(kept.charAt(most - 1)) ? most - 1 : most;
        return kept.substring(0, end) + "…";
    }
}
