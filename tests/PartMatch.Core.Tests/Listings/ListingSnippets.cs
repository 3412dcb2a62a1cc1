namespace PartMatch.Core.Tests.Listings;

/// <summary>Pages of CHECKS.md section I, written for it: everything in them is invented, the vocabulary is schema.org's. Two long lines are broken.</summary>
internal static class ListingSnippets
{
    public const string JsonLdSingle = """
        <!doctype html><html lang="en"><head><meta charset="utf-8"><title>Throttle body gasket K</title>
        <script type="application/ld+json">
        {
          "@context": "https://schema.org/",
          "@type": "Product",
          "name": "Throttle body gasket, variant K",
          "mpn": "QX41-2075-A",
          "sku": "TB-0091",
          "gtin13": "2012345678903",
          "offers": {
            "@type": "Offer",
            "url": "https://shop-one.example/p/tb-0091",
            "price": "14.50",
            "priceCurrency": "EUR",
            "availability": "https://schema.org/InStock",
            "itemCondition": "https://schema.org/NewCondition",
            "shippingDetails": {
              "@type": "OfferShippingDetails",
              "shippingRate": { "@type": "MonetaryAmount", "value": "6.90", "currency": "EUR" },
              "shippingDestination": { "@type": "DefinedRegion", "addressCountry": "DE" },
              "deliveryTime": {
                "@type": "ShippingDeliveryTime",
                "handlingTime": { "@type": "QuantitativeValue", "minValue": 0, "maxValue": 1, "unitCode": "DAY" },
                "transitTime": { "@type": "QuantitativeValue", "minValue": 2, "maxValue": 4, "unitCode": "DAY" }
              }
            }
          }
        }
        </script></head><body><h1>Throttle body gasket, variant K</h1></body></html>
        """;

    public const string JsonLdOfferArray = """
        <!doctype html><html lang="en"><head><meta charset="utf-8"><title>Injector set</title>
        <script type="application/ld+json">
        [
         { "@context": "https://schema.org", "@type": "WebSite", "name": "Shop Three (example)" },
         { "@context": "https://schema.org",
           "@type": "Product",
           "name": "Port injector, 440 cm3/min at 300 kPa (n-heptane)",
           "sku": "INJ-440",
           "isSimilarTo": { "@type": "Product", "sku": "INJ-430" },
           "offers": [
             { "@type": "Offer", "price": "38.00", "priceCurrency": "GBP", "itemCondition": "NewCondition", "availability": "https://schema.org/InStock" },
             { "@type": "Offer", "price": 21.5, "priceCurrency": "GBP",
              "itemCondition": "https://schema.org/RefurbishedCondition", "availability": "https://schema.org/SoldOut" },
             { "@type": "Offer", "priceSpecification": { "@type": "UnitPriceSpecification", "price": "144.00", "priceCurrency": "GBP",
              "referenceQuantity": { "@type": "QuantitativeValue", "value": 4 } }, "itemCondition": "https://schema.org/NewCondition", "availability": "https://schema.org/InStock" }
           ] }
        ]
        </script></head><body></body></html>
        """;

    public const string JsonLdAggregate = """
        <!doctype html><html lang="en"><head><meta charset="utf-8"><title>Cam sprocket</title>
        <script type="application/ld+json">
        { "@context": "https://schema.org", "@type": "Product", "name": "Cam sprocket, 40 teeth", "gtin": "2000000000015",
          "offers": { "@type": "AggregateOffer", "lowPrice": "19.90", "highPrice": "47.00", "priceCurrency": "USD", "offerCount": "5",
            "offers": [ { "@type": "Offer", "price": "19.90", "priceCurrency": "USD", "itemCondition": "https://schema.org/DamagedCondition",
                          "seller": { "@type": "Organization", "name": "Seller Four-A (example)" } } ] } }
        </script></head><body></body></html>
        """;

    public const string RdfaLite = """
        <!doctype html><html lang="fr"><head><meta charset="utf-8"><title>Courroie</title></head><body>
        <div vocab="https://schema.org/" typeof="Product">
          <span property="name">Ribbed belt 6 PK 1500, invented</span>
          <span property="productID" content="mpn:RB-6PK-1500">ref. RB-6PK-1500</span>
          <div property="isAccessoryOrSparePartFor" typeof="Product"><span property="name">Engine family QX, all variants with alternator left</span></div>
          <div property="offers" typeof="Offer">
            <meta property="priceCurrency" content="EUR"><span property="price" content="17.95">17,95 &euro;</span>
            <link property="itemCondition" href="https://schema.org/NewCondition">
            <link property="availability" href="https://schema.org/OutOfStock">
          </div>
        </div></body></html>
        """;
}
