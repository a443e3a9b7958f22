#include "spec/client_words.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
// English, Spanish, French, German, Portuguese, Vietnamese and Arabic, in this order.
constexpr std::array<HeaderWords, 23> table{{
    {ClientFact::name,
     "pet|pet name|pet's name|pets name|name of pet|dog|dog name|dog's name|dogs name|name of dog|"
     "animal|animal name|patient|call name|"
     "mascota|nombre de la mascota|nombre mascota|perro|nombre del perro|nombre perro|"
     "chien|nom du chien|nom de l'animal|nom animal|animal nom|"
     "hund|hundename|name des hundes|name hund|tier|tiername|name des tieres|rufname|haustier|"
     "cão|nome do cão|nome cão|cachorro|nome do cachorro|pet nome|nome do pet|nome do animal|"
     "tên chó|tên thú cưng|thú cưng|chó|tên bé|tên cún|"
     "اسم الكلب|الكلب|كلب|اسم الحيوان|الحيوان|اسم الحيوان الأليف|الحيوان الأليف"},
    {ClientFact::breed,
     "breed|pet breed|dog breed|breed cross|breed of dog|cross|raza|raza del perro|race|"
     "race du chien|rasse|hunderasse|tierrasse|raça|raça do cão|giống|giống chó|loại|"
     "السلالة|سلالة|النوع|نوع|الفصيلة|فصيلة"},
    {ClientFact::coat,
     "coat|coat type|hair type|fur|pelo|tipo de pelo|manto|pelaje|poil|type de poil|pelage|fell|"
     "felltyp|fellart|haar|haarart|pelagem|tipo de pelagem|lông|loại lông|bộ lông|"
     "الفرو|فرو|نوع الشعر|نوع الفرو|الشعر"},
    {ClientFact::colour,
     "colour|color|coat colour|coat color|markings|colour markings|color markings|color del pelo|"
     "capa|couleur|robe|couleur de la robe|farbe|fellfarbe|cor|cor do pelo|cor da pelagem|màu|"
     "màu lông|màu sắc|اللون|لون|لون الفرو|لون الشعر"},
    {ClientFact::sex,
     "sex|gender|m f|sex neutered|sexo|género|sexe|genre|geschlecht|gênero|giới tính|đực cái|"
     "الجنس|جنس"},
    {ClientFact::born,
     "born|date of birth|birth date|birthdate|birthday|dob|d o b|pet dob|dog dob|born on|"
     "fecha de nacimiento|nacimiento|nacido|f nacimiento|cumpleaños|fecha nac|fecha nacimiento|"
     "date de naissance|naissance|né le|née le|né e le|anniversaire|"
     "geburtsdatum|geboren|geboren am|geburtstag|geb|geb datum|wurftag|wurfdatum|"
     "data de nascimento|nascimento|nascido|nascido em|aniversário|data nasc|"
     "ngày sinh|sinh ngày|sinh nhật|تاريخ الميلاد|الميلاد|تاريخ الولادة|الولادة"},
    {ClientFact::weight,
     "weight|weight in|pet weight|dog weight|peso|peso en|peso em|poids|poids en|gewicht|"
     "gewicht in|cân nặng|trọng lượng|الوزن|وزن"},
    {ClientFact::owner,
     "owner|owner name|owner's name|owners name|owner full name|client|client name|client's name|"
     "customer|customer name|guardian|pet parent|contact|contact name|full name|"
     "dueño|dueña|dueño a|nombre del dueño|propietario|propietaria|nombre del propietario|cliente|"
     "nombre del cliente|titular|"
     "propriétaire|nom du propriétaire|maître|nom du client|cliente nom|client e|"
     "besitzer|besitzerin|besitzer in|name des besitzers|halter|halterin|halter in|tierhalter|"
     "hundehalter|kunde|kundin|kunde in|kundenname|name des kunden|name des halters|eigentümer|"
     "dono|dona|nome do dono|tutor|tutora|tutor a|nome do tutor|proprietário|proprietária|"
     "nome do proprietário|nome do cliente|responsável|"
     "chủ|chủ nuôi|tên chủ|tên chủ nuôi|chủ nhân|khách hàng|tên khách hàng|tên khách|họ và tên|"
     "họ tên|المالك|مالك|اسم المالك|صاحب الكلب|اسم صاحب الكلب|العميل|عميل|اسم العميل|الزبون|"
     "اسم الزبون"},
    {ClientFact::first_name,
     "first name|firstname|forename|given name|owner first name|owner's first name|"
     "client first name|customer first name|nombre de pila|primer nombre|prénom|"
     "prénom du propriétaire|vorname|primeiro nome|الاسم الأول"},
    {ClientFact::last_name,
     "last name|lastname|surname|family name|owner last name|owner's last name|client last name|"
     "customer last name|owner surname|apellido|apellidos|nom de famille|nachname|familienname|"
     "zuname|sobrenome|apelido|último nome|اسم العائلة|العائلة|اللقب|الكنية"},
    {ClientFact::family_name, "họ|họ đệm|họ và tên đệm"},
    {ClientFact::phone,
     "phone|phone number|phone no|telephone|telephone number|tel|tel no|mobile|mobile phone|"
     "mobile number|cell|cell phone|cellphone|home phone|work phone|contact number|number|"
     "owner phone|owner's phone|client phone|customer phone|phone home|phone mobile|"
     "teléfono|teléfono móvil|móvil|celular|tel móvil|número de teléfono|teléfono fijo|"
     "téléphone|tél|portable|mobile portable|numéro de téléphone|téléphone portable|n de téléphone|"
     "n de tél|téléphone fixe|telefon|telefonnummer|tel nr|telefon "
     "nr|telefonnr|handy|handynummer|handy nr|mobil nr|"
     "mobil|mobilnummer|rufnummer|festnetz|mobiltelefon|"
     "telefone|telemóvel|número de telefone|telefone celular|telefone fixo|contato|contacto|"
     "điện thoại|số điện thoại|sđt|đt|di động|"
     "الهاتف|هاتف|رقم الهاتف|الجوال|جوال|رقم الجوال|المحمول|رقم المحمول|الموبايل|موبايل"},
    {ClientFact::email,
     "email|e mail|email address|e mail address|mail|owner email|client email|correo|"
     "correo electrónico|courriel|adresse email|adresse e mail|adresse mail|email adresse|"
     "e mail adresse|thư điện tử|البريد الإلكتروني|البريد الالكتروني|بريد إلكتروني|الإيميل|ايميل"},
    {ClientFact::address,
     "address|street|street address|address line|home address|owner address|town|city|postcode|"
     "post code|zip|zip code|postal code|state|county|"
     "dirección|domicilio|calle|ciudad|población|código postal|c p|cp|provincia|"
     "adresse|rue|ville|code postal|straße|strasse|anschrift|wohnort|ort|plz|stadt|postleitzahl|"
     "hausnummer|endereço|morada|rua|cidade|cep|localidade|bairro|"
     "địa chỉ|đường|thành phố|quận|العنوان|عنوان|الشارع|المدينة|الرمز البريدي"},
    {ClientFact::language,
     "language|preferred language|speaks|idioma|lengua|langue|sprache|língua|ngôn ngữ|اللغة|لغة"},
    {ClientFact::collects,
     "collects|collected by|pick up|pick up by|picked up by|who may collect|who collects|recoge|"
     "quién recoge|persona autorizada|vient chercher|personne autorisée|abholer|abholung durch|"
     "holt ab|abgeholt von|quem busca|pessoa autorizada|người đón|يستلم|من يستلم|المستلم"},
    {ClientFact::vet,
     "vet|vet name|vet's name|veterinarian|veterinary|vet clinic|vet practice|vet surgery|"
     "veterinario|veterinaria|clínica veterinaria|vétérinaire|véto|tierarzt|tierärztin|"
     "tierarztpraxis|haustierarzt|veterinário|veterinária|clínica veterinária|bác sĩ thú y|thú y|"
     "phòng khám thú y|الطبيب البيطري|طبيب بيطري|البيطري"},
    {ClientFact::vet_phone,
     "vet phone|vet's phone|vet tel|vet telephone|vet number|phone of vet|"
     "teléfono del veterinario|teléfono veterinario|téléphone du vétérinaire|tél vétérinaire|"
     "téléphone vétérinaire|telefon tierarzt|tierarzt telefon|tierarzt tel|"
     "telefone do veterinário|telefone veterinário|điện thoại thú y|sđt thú y|"
     "هاتف الطبيب البيطري|هاتف البيطري"},
    {ClientFact::alert,
     "alert|alerts|warning|warnings|caution|cautions|beware|behaviour|behavior|temperament|"
     "behaviour notes|behavior notes|bites|aggression|"
     "alerta|alertas|aviso|avisos|precaución|precauciones|comportamiento|temperamento|carácter|"
     "alerte|alertes|attention|avertissement|comportement|tempérament|caractère|"
     "warnung|warnhinweis|warnhinweise|vorsicht|achtung|verhalten|wesen|charakter|"
     "cuidado|cuidados|atenção|comportamento|"
     "cảnh báo|lưu ý|chú ý|tính cách|hành vi|تنبيه|تنبيهات|تحذير|تحذيرات|السلوك|سلوك|الطباع"},
    {ClientFact::note,
     "note|notes|remark|remarks|comment|comments|groom notes|grooming notes|trim|trim notes|"
     "haircut|style|groom|info|information|"
     "nota|notas|observación|observaciones|comentario|comentarios|corte|"
     "remarque|remarques|commentaire|commentaires|observations|coupe|toilettage|"
     "notiz|notizen|bemerkung|bemerkungen|anmerkung|anmerkungen|hinweis|hinweise|schnitt|frisur|"
     "observação|observações|obs|comentário|comentários|tosa|"
     "ghi chú|nhận xét|kiểu cắt|ملاحظة|ملاحظات|القصة"},
    {ClientFact::allergies,
     "allergy|allergies|allergic to|alergia|alergias|alérgico a|allergie|allergies connues|"
     "allergien|allergisch gegen|dị ứng|حساسية|الحساسية|حساسيات"},
    {ClientFact::health,
     "health|medical|medical notes|medical conditions|medical condition|condition|conditions|"
     "health notes|medication|illness|illnesses|salud|enfermedades|enfermedad|medicación|"
     "santé|maladies|maladie|problèmes de santé|médicaments|gesundheit|krankheiten|krankheit|"
     "erkrankungen|vorerkrankungen|medikamente|saúde|doenças|doença|medicação|"
     "sức khỏe|sức khoẻ|bệnh|bệnh lý|الصحة|الحالة الصحية|الأمراض|أمراض"},
    {ClientFact::every,
     "every|interval|visit every|visits every|frequency|how often|cada|frecuencia|intervalo|"
     "tous les|fréquence|intervalle|alle|intervall|rhythmus|abstand|a cada|frequência|"
     "chu kỳ|tần suất|كل|التكرار|الفترة"},
}};

constexpr std::string_view generic_names =
    "name|names|nombre|nombres|nom|nome|nomes|tên|الاسم|اسم|full names";

constexpr std::string_view last_visits =
    "last visit|last seen|last appointment|last groom|last service|previous visit|"
    "última visita|última cita|dernière visite|dernier passage|dernier rendez vous|"
    "letzter besuch|letzter termin|lần cuối|lần trước|آخر زيارة|الزيارة الأخيرة";

constexpr std::string_view no_words =
    "-|--|–|—|.|/|?|0|n/a|n.a.|na|none|nil|no|nothing|none known|unknown|not known|"
    "ninguno|ninguna|nada|desconocido|aucun|aucune|non|néant|rien|ras|inconnu|"
    "kein|keine|keiner|nein|nichts|unbekannt|k.a.|nenhum|nenhuma|não|desconhecido|"
    "không|không có|لا|لا يوجد|لا شيء|غير معروف";

constexpr std::array<std::string_view, 7> languages{
    "en=english|inglés|ingles|anglais|englisch|inglês|tiếng anh|الإنجليزية|انجليزي",
    "es=spanish|español|castellano|espagnol|spanisch|espanhol|tiếng tây ban nha|الإسبانية",
    "fr=french|francés|français|französisch|francês|tiếng pháp|الفرنسية",
    "de=german|alemán|allemand|deutsch|alemão|tiếng đức|الألمانية",
    "pt=portuguese|portugués|portugais|portugiesisch|português|tiếng bồ đào nha|البرتغالية",
    "vi=vietnamese|vietnamita|vietnamien|vietnamesisch|tiếng việt|الفيتنامية",
    "ar=arabic|árabe|arabe|arabisch|tiếng ả rập|العربية|عربي"};

std::set<std::string> plain_words_of(std::string_view list) {
  std::set<std::string> out;
  for (std::string_view rest = list; !rest.empty();) {
    const std::size_t end = std::min(rest.find('|'), rest.size());
    out.insert(plain_letters(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return out;
}
}  // namespace

std::span<const HeaderWords> header_words() {
  return table;
}

std::string_view name_words() {
  return generic_names;
}

std::set<std::string> nothing_words() {
  return plain_words_of(no_words);
}

bool heads_last_visits(std::string_view header) {
  std::string plain = plain_letters(trimmed(header));
  std::ranges::replace_if(
      plain, [](char c) { return c == '-' || c == '_'; }, ' ');
  return std::ranges::any_of(plain_words_of(last_visits),
                             [&](const std::string& words) { return plain.starts_with(words); });
}

std::string_view language_named(std::string_view name) {
  const std::string plain = plain_letters(name);
  for (const std::string_view row : languages) {
    for (std::string_view rest = row.substr(3); !rest.empty();) {
      const std::size_t end = std::min(rest.find('|'), rest.size());
      if (plain_letters(rest.substr(0, end)) == plain) return row.substr(0, 2);
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }
  return {};
}
}  // namespace furnish
