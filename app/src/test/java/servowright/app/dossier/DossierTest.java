package servowright.app.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import servowright.app.FrostCart;
import servowright.app.view.View;

class DossierTest {
    private static String dossier(String name) {
        return Dossier.html(View.present(FrostCart.assessment(name), List.of("There is no bench.yaml.")));
    }

    private static Document parsed(String html) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    }

    @Test
    void is_well_formed_xml() throws Exception {
        Document page = parsed(dossier("Frost cart"));
        assertThat(page.getElementsByTagName("article").getLength()).isEqualTo(4);
        assertThat(page.getElementsByTagName("svg").getLength()).isEqualTo(3);
        assertThat(page.getElementsByTagName("h1").item(0).getTextContent()).isEqualTo("Frost cart");
    }

    @Test
    void needs_nothing_from_anywhere() {
        String html = dossier("Frost cart").toLowerCase(Locale.ROOT);
        assertThat(html.replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http:")
                .doesNotContain("https:")
                .doesNotContain("<script")
                .doesNotContain("<img")
                .doesNotContain("<link")
                .doesNotContain("@import")
                .doesNotContain("url(");
    }

    @Test
    void escapes_hostile_names() throws Exception {
        String name = "</title></style><script>alert('x')</script> & \"q\" \u0001 \ud83d\ude9c";
        String html = dossier(name);
        assertThat(html).doesNotContain("<script").doesNotContain("</style><");
        Document page = parsed(html);
        assertThat(page.getElementsByTagName("h1").item(0).getTextContent())
                .isEqualTo(name.replace('\u0001', '\ufffd'));
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
    }

    @Test
    void gives_the_same_bytes_for_the_same_assessment() {
        assertThat(dossier("Frost cart")).isEqualTo(dossier("Frost cart"));
    }

    @Test
    void says_the_verdict_in_words_and_carries_cautions_hashes_and_assumptions() {
        assertThat(dossier("Frost cart"))
                .contains("class=\"verdict fails\">fails<")
                .contains("class=\"verdict not-shown\">not shown<")
                .contains("Motors turn, springs store, batteries burn")
                .contains("ab".repeat(32))
                .contains("reserve of 10 % for control taken")
                .contains("42 rpm/V [line peak, label]")
                .contains("machine.yaml:12")
                .contains("There is no bench.yaml.");
    }

    @Test
    void holds_the_correction_of_a_sensor_as_harmonics_and_as_a_table() {
        assertThat(dossier("Frost cart"))
                .contains("id=\"corrections\"")
                .contains("From reference run lift 1")
                .contains("Table of 64 entries")
                .contains("0.5000 deg");
    }
}
